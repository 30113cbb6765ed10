import { getTranslations } from 'next-intl/server';
import { shownDate } from '@/app/_ui/shown-date';
import { shownChance } from '@/app/readiness/shown-chance';
import type { Lack, Soon, Trust } from '@/lib/readiness/sentences';
import type { Report } from './read-report';
import { topicNames } from './topic-names';

/** The three plain sentences about somebody in a role. */
export async function threeSentences(report: Report): Promise<[string, string, string]> {
  const { trust, lack, soon } = report.sentences;
  return [await trustSentence(trust, report), await lackSentence(lack), await soonSentence(soon, report)];
}

async function trustSentence(trust: Trust, { person, profile }: Report): Promise<string> {
  const t = await getTranslations('readiness.report.trust');
  const whose = { name: person.name, role: profile.text.en.name };
  switch (trust.code) {
    case 'ready':
      return t('ready', { ...whose, topic: topicNames()(trust.topic), chance: shownChance(trust.chance) });
    case 'not-yet':
      return t('not-yet', { ...whose, weak: trust.weak, of: trust.of, unsafe: trust.unsafe ? 'yes' : 'no' });
    case 'not-enough-evidence':
      return t('not-enough-evidence', { ...whose, shown: trust.shown, of: trust.of });
  }
}

async function lackSentence({ topics, unsafe, cases }: Lack): Promise<string> {
  const t = await getTranslations('readiness.report.lack');
  const names = topicNames();
  const parts = [
    ...topics.map(({ missing, topics: ids }) => t(missing, { topics: ids.map(names).join(', ') })),
    ...(unsafe > 0 ? [t('unsafe', { count: unsafe })] : []),
    ...(cases > 0 ? [t('cases', { count: cases })] : []),
  ];
  return parts.length === 0 ? t('nothing') : t('start', { parts: parts.join('; ') });
}

async function soonSentence(soon: Soon, { settings }: Report): Promise<string> {
  const t = await getTranslations('readiness.report.soon');
  const decisions = await getTranslations('readiness.decisions');
  switch (soon.code) {
    case 'nothing':
      return t('nothing', { days: soon.days });
    case 'sign-off':
      return t('sign-off', { date: shownDate(new Date(soon.at), settings) });
    case 'topic':
      return t('topic', {
        topic: topicNames()(soon.change.topic),
        from: decisions(soon.change.from),
        date: shownDate(new Date(soon.change.at), settings),
        others: soon.others,
      });
  }
}

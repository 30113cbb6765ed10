import { getTranslations } from 'next-intl/server';
import { shownDate, shownTime } from '@/app/_ui/shown-date';
import { shownChance } from '@/app/readiness/shown-chance';
import type { Decision } from '@/lib/competency/decision';
import { HORIZON_DAYS } from '@/lib/readiness/board';
import type { TopicStanding } from '@/lib/readiness/intake-outcome';
import { missingOf } from '@/lib/readiness/missing';
import { catalogue } from '../catalogue';
import type { ReadOdds } from './read-odds';
import type { Report } from './read-report';
import { threeSentences } from './report-sentences';
import { topicNames } from './topic-names';

/** A topic's row, ready to be written. */
export interface TopicLine {
  standing: TopicStanding;
  topic: string;
  word: string;
  chance: string;
  asked: string;
  line: string;
  ability: string;
  responses: string;
  newest: string;
  /** What the drawing of the row shows, in words. */
  scale: string;
}

export interface OddsText {
  sentence: string;
  /** Distance from the line, then shares ready, not yet and undecided, then responses. */
  rows: readonly (readonly string[])[];
  caption: string;
}

/** A report in words: what the page shows, the document says too. */
export interface ReportText {
  title: string;
  /** Said where everybody in it is invented. */
  invented: string | undefined;
  decision: { code: Decision; word: string };
  sentences: readonly string[];
  topics: readonly TopicLine[];
  safety: string;
  changes: readonly string[];
  trainings: readonly string[];
  odds: readonly OddsText[];
  oddsAll: string;
  versions: string;
}

/** @param printedBy  Whoever looks at it. */
export async function reportText(report: Report, odds: readonly ReadOdds[], printedBy: string): Promise<ReportText> {
  const { person, profile, standing, settings, at } = report;
  const t = await getTranslations('readiness.report');
  const decisions = await getTranslations('readiness.decisions');
  const { decision, safety } = standing;
  return {
    title: t('title', { name: person.name, role: profile.text.en.name }),
    invented: report.demo ? t('invented') : undefined,
    decision: { code: decision, word: decisions(decision) },
    sentences: await threeSentences(report),
    topics: await Promise.all(standing.topics.map((topic) => topicLine(topic, report))),
    safety: t(`safety.${safety.code}`, { ...safety, atLeast: profile.safety.atLeast }),
    changes: await changeLines(report),
    trainings: await trainingLines(report),
    odds: await Promise.all(odds.map(oddsText)),
    oddsAll: t('oddsAll', { count: profile.topics.length }),
    versions: t('versions', {
      at: shownTime(at, settings),
      role: profile.text.en.name,
      version: profile.version,
      content: catalogue().contentHash.slice(0, 12),
      by: printedBy,
    }),
  };
}

async function topicLine(standing: TopicStanding, { profile, settings, at }: Report): Promise<TopicLine> {
  const t = await getTranslations('readiness.report');
  const missings = await getTranslations('readiness.missings');
  const decisions = await getTranslations('readiness.decisions');
  const { chance, confidence, cut, mean, responses, cases, newestAt } = standing;
  const [low, high] = standing.interval.map(logits) as [string, string];
  const missing = missingOf(standing, profile, at.getTime());
  const isTested = responses > 0;
  const line = logits(cut);
  return {
    standing,
    topic: topicNames()(standing.topic),
    word: missing ? missings(missing) : decisions('ready'),
    chance: shownChance(chance),
    asked: confidence.toFixed(2),
    line,
    ability: isTested ? t('ability', { mean: logits(mean), low, high }) : '–',
    responses: isTested ? t('responses', { count: responses, cases }) : t('none'),
    newest: newestAt === null ? '–' : shownDate(new Date(newestAt), settings),
    scale: isTested ? t('scale', { low, high, mean: logits(mean), line }) : t('untestedScale', { line }),
  };
}

async function changeLines({ changes, settings }: Report): Promise<string[]> {
  const t = await getTranslations('readiness.report');
  const decisions = await getTranslations('readiness.decisions');
  if (changes.length === 0) return [t('noChanges', { days: HORIZON_DAYS })];
  return changes.map(({ topic, from, because, at }) =>
    t('change', {
      topic: topicNames()(topic),
      from: decisions(from),
      because,
      date: shownDate(new Date(at), settings),
    }),
  );
}

async function trainingLines({ trainings }: Report): Promise<string[]> {
  const t = await getTranslations('readiness.report');
  if (trainings.length === 0) return [t('noTrain')];
  return trainings.map(({ topic, because }) =>
    t('train', { topic: topicNames()(topic), because: t(`because.${because}`) }),
  );
}

async function oddsText({ rule, topics, odds }: ReadOdds): Promise<OddsText> {
  const t = await getTranslations('readiness.report');
  const [, below, , , above] = odds;
  if (!below || !above) throw new Error('Odds without a place below and above the line');
  const hundred = (share: number) => Math.round(100 * share);
  return {
    sentence: t('odds', {
      at: logits(below.theta),
      line: logits(rule.cut),
      topics: topics.map(topicNames()).join(', '),
      ready: hundred(below.ready),
      notYet: hundred(below.notYet),
      undecided: hundred(below.undecided),
      above: hundred(above.ready),
    }),
    caption: t('oddsCaption', { responses: rule.maximum }),
    rows: odds.map(({ fromLine, ready, notYet, undecided, responses }) => [
      signed(fromLine),
      ...[ready, notYet, undecided].map((share) => share.toFixed(2)),
      responses.toFixed(1),
    ]),
  };
}

/** Ability, with a minus that reads as one. */
function logits(value: number): string {
  return value.toFixed(2).replace('-', '−');
}

function signed(value: number): string {
  return value > 0 ? `+${logits(value)}` : logits(value);
}

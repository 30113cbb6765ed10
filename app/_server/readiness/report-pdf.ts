import { getLocale, getTranslations } from 'next-intl/server';
import { shownDate, shownTime } from '@/app/_ui/shown-date';
import { listNames } from '@/db/queries/names';
import { database } from '../database';
import { beginPdf, finishPdf, heading, list, type Pdf, type PdfFacts, paragraph } from '../pdf/document';
import { table } from '../pdf/table';
import { obstacleSentence } from './obstacle-sentence';
import type { Report } from './read-report';
import type { ReportText } from './report-text';

/** The report of one person as a tagged document: the same words as on the page, and the same bytes for the same report. */
export async function reportPdf(report: Report, text: ReportText): Promise<Buffer> {
  const t = await getTranslations('readiness.report');
  const facts: PdfFacts = {
    title: text.title,
    language: await getLocale(),
    at: report.at,
    foot: t('foot', { title: text.title, at: shownTime(report.at, report.settings), page: '{page}', pages: '{pages}' }),
  };
  const pdf = beginPdf(facts);
  await writeHead(pdf, text);
  await writeTopics(pdf, text);
  heading(pdf, 2, t('safetyTitle'));
  paragraph(pdf, text.safety);
  heading(pdf, 2, t('changesTitle'));
  list(pdf, text.changes);
  heading(pdf, 2, t('trainTitle'));
  list(pdf, text.trainings);
  await writeSignOff(pdf, report);
  await writeHandsOn(pdf, report);
  await writeOdds(pdf, text);
  paragraph(pdf, text.versions, 'small');
  return finishPdf(pdf, facts);
}

async function writeHead(pdf: Pdf, { title, invented, decision, sentences }: ReportText): Promise<void> {
  const t = await getTranslations('readiness.report');
  const safety = await getTranslations('safety');
  heading(pdf, 1, title);
  if (invented) paragraph(pdf, invented, 'strong');
  paragraph(pdf, safety('law'), 'caution');
  paragraph(pdf, safety('list'), 'small');
  heading(pdf, 2, t('sentences'));
  paragraph(pdf, decision.word, 'strong');
  list(pdf, sentences);
}

async function writeTopics(pdf: Pdf, { topics }: ReportText): Promise<void> {
  const t = await getTranslations('readiness.report');
  heading(pdf, 2, t('topicsTitle'));
  const columns = [
    'colTopic',
    'colDecision',
    'colChance',
    'colLine',
    'colAbility',
    'colResponses',
    'colNewest',
  ] as const;
  table(pdf, {
    caption: t('topicsCaption'),
    head: columns.map((column) => t(column)),
    rows: topics.map(({ topic, word, chance, asked, line, ability, responses, newest }) => [
      topic,
      word,
      `${chance} (${t('colAsked')} ${asked})`,
      line,
      ability,
      responses,
      newest,
    ]),
    shares: [2.6, 1.3, 1.6, 0.8, 1.9, 1.5, 1.5],
  });
}

async function writeSignOff(pdf: Pdf, { signOff, obstacles, profile, person, settings }: Report): Promise<void> {
  const t = await getTranslations('readiness.report');
  heading(pdf, 2, t('signTitle'));
  if (signOff) {
    const [signer] = await listNames(database(), person.organizationId, [signOff.signedBy]);
    paragraph(
      pdf,
      t('signedUntil', {
        by: signer?.name ?? t('erased'),
        date: shownDate(signOff.signedAt, settings),
        until: shownDate(signOff.endsAt, settings),
        comment: signOff.comment,
      }),
    );
  } else paragraph(pdf, t('noSignOff'));
  // Who may sign is not a matter of the person whom the report is of.
  const standing = obstacles.filter(({ code }) => code !== 'oneself');
  if (standing.length === 0) return;
  heading(pdf, 3, t('obstaclesTitle'));
  list(pdf, await Promise.all(standing.map((one) => obstacleSentence(one, profile))));
}

async function writeHandsOn(pdf: Pdf, { check, person, settings }: Report): Promise<void> {
  const t = await getTranslations('readiness.report');
  heading(pdf, 2, t('handsOnTitle'));
  if (!check) return paragraph(pdf, t('handsOnNone'));
  const [observer] = await listNames(database(), person.organizationId, [check.observedBy]);
  const date = shownDate(check.observedAt, settings);
  paragraph(pdf, t('check', { date, by: observer?.name ?? t('erased'), role: 'none' }));
  if (check.unsafe) paragraph(pdf, t('checkUnsafe'), 'caution');
  const items = check.items.map(({ text, score, outOf, pass }) => {
    const points = t('points', { score, outOf, pass, below: score < pass ? 'yes' : 'no' });
    return `${text}: ${points}`;
  });
  list(pdf, items);
  paragraph(pdf, check.comment);
}

async function writeOdds(pdf: Pdf, { odds, oddsAll }: ReportText): Promise<void> {
  const t = await getTranslations('readiness.report');
  heading(pdf, 2, t('oddsTitle'));
  const columns = ['colFrom', 'colReady', 'colNotYet', 'colUndecided', 'colMean'] as const;
  const head = columns.map((column) => t(column));
  for (const { sentence, caption, rows } of odds) {
    paragraph(pdf, sentence);
    table(pdf, { caption, head, rows, shares: [1, 1, 1, 1.6, 1.6] });
  }
  paragraph(pdf, oddsAll);
}

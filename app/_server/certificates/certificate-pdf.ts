import { getTranslations } from 'next-intl/server';
import { shownDate } from '@/app/_ui/shown-date';
import { readSettings } from '../organization-settings';
import { beginPdf, figure, finishPdf, heading, paragraph } from '../pdf/document';
import { table } from '../pdf/table';
import { certificateAddress } from './addresses';
import { drawCode } from './draw-code';
import type { OnRecord } from './read-standing';

/** Points: 4.2 cm, which a telephone reads from an arm's length. */
const CODE = 120;

/** A certificate on paper, made out to its holder by name. The same certificate gives the same bytes. */
export async function certificatePdf(record: OnRecord): Promise<Buffer> {
  const { row, organizationName } = record;
  const t = await getTranslations('certificatePaper');
  const { name, claim, notFor, criteria } = row.scheme.text.en;
  const facts = { title: t('title', { name }), language: 'en', at: row.issuedAt, foot: t('foot', { number: row.id }) };
  const pdf = beginPdf(facts);
  if (row.demo) paragraph(pdf, t('invented'), 'caution');
  heading(pdf, 1, name);
  paragraph(pdf, t('madeOut', { issuer: organizationName, holder: row.holder ?? t('nobody') }));
  heading(pdf, 2, t('claim'));
  paragraph(pdf, claim);
  heading(pdf, 2, t('notFor'));
  paragraph(pdf, notFor);
  heading(pdf, 2, t('criteria'));
  paragraph(pdf, criteria);
  table(pdf, { ...(await datesOf(record)), shares: [1, 2] });
  heading(pdf, 2, t('checkTitle'));
  const address = certificateAddress(row.id);
  paragraph(pdf, t('checkBody', { address }));
  figure(pdf, { alt: t('code', { address }), width: CODE, height: CODE }, (doc, left, top) =>
    drawCode(doc, address, { left, top, size: CODE }),
  );
  paragraph(pdf, t('honest'), 'small');
  return finishPdf(pdf, facts);
}

async function datesOf({ row }: OnRecord) {
  const t = await getTranslations('certificatePaper');
  const settings = await readSettings(row.organizationId);
  return {
    caption: t('facts'),
    head: [t('fact'), t('says')],
    rows: [
      [t('scheme'), t('version', { version: row.scheme.version })],
      [t('from'), shownDate(row.issuedAt, settings)],
      [t('until'), shownDate(row.expiresAt, settings)],
      [t('number'), row.id],
    ],
  };
}

import { getTranslations } from 'next-intl/server';
import { shownDate, shownTime } from '@/app/_ui/shown-date';
import { worthShowing } from '@/lib/certificates/certificate';
import type { PresentationRefusal } from '@/lib/certificates/refusal';
import { readSettings } from '../organization-settings';
import type { OnRecord } from './read-standing';
import { resultsOf } from './signed-certificate';

/** A certificate in words, with no more of its holder than they agreed to have shown. */
export interface CertificateView {
  ok: boolean;
  headline: string;
  /** Why it is refused; null where it is not. */
  because: string | null;
  /** Null where the name that was asked about is not to be compared. */
  named: string | null;
  facts: { term: string; text: string }[];
  results: { name: string; value: string; cut: string }[];
  invented: boolean;
}

/** @param refusal  Null for one that is good. */
export async function certificateView(
  record: OnRecord | undefined,
  refusal: PresentationRefusal | null,
): Promise<CertificateView> {
  const t = await getTranslations('verify');
  return {
    ok: refusal === null,
    headline: refusal ? t('refused') : t('good'),
    because: refusal && (await refusalSentence(refusal, record)),
    named: null,
    facts: record ? await factsOf(record) : [],
    results: record?.row.consent.results ? shownResults(record) : [],
    invented: record?.row.demo ?? false,
  };
}

async function factsOf({ row, organizationName }: OnRecord): Promise<CertificateView['facts']> {
  const t = await getTranslations('verify.facts');
  const settings = await readSettings(row.organizationId);
  const { name, claim, notFor } = row.scheme.text.en;
  return [
    { term: t('scheme'), text: t('version', { name, version: row.scheme.version }) },
    { term: t('holder'), text: row.consent.name && row.holder ? row.holder : t('unnamed') },
    { term: t('claim'), text: claim },
    { term: t('notFor'), text: notFor },
    { term: t('issuer'), text: organizationName },
    { term: t('from'), text: shownDate(row.issuedAt, settings) },
    { term: t('until'), text: shownDate(row.expiresAt, settings) },
    { term: t('number'), text: row.id },
  ];
}

function shownResults({ row }: OnRecord): CertificateView['results'] {
  return worthShowing(resultsOf(row.standing)).map(({ name, value, cut }) => ({
    name,
    value: value.toFixed(1),
    cut: cut.toFixed(1),
  }));
}

async function refusalSentence(refusal: PresentationRefusal, record: OnRecord | undefined): Promise<string> {
  const t = await getTranslations('verify.refusals');
  const settings = await readSettings(record?.row.organizationId ?? '');
  const at = (moment: number) => shownTime(new Date(moment), settings);
  switch (refusal.code) {
    case 'wrong-issuer':
      return t('wrong-issuer', { issuer: refusal.issuer.slice(0, 200) });
    case 'schema':
      return t('schema', { at: refusal.at });
    case 'not-yet-valid':
      return t('not-yet-valid', { at: at(refusal.from) });
    case 'expired':
    case 'stale':
      return t(refusal.code, { at: at(refusal.since) });
    case 'suspended':
    case 'revoked':
      return t(refusal.code, { reason: refusal.reason });
    case 'wrong-audience':
      return t('wrong-audience', { audience: refusal.audience.slice(0, 200) });
    case 'replayed':
      return t('replayed', { at: at(refusal.at) });
    default:
      return t(refusal.code);
  }
}

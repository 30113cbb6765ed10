import type { Metadata } from 'next';
import { notFound } from 'next/navigation';
import { getTranslations } from 'next-intl/server';
import { actsAt, isPartial, type StatusAct } from '@/app/_server/certificates/change-status';
import { database } from '@/app/_server/database';
import { page } from '@/app/_server/guard';
import { readSettings } from '@/app/_server/organization-settings';
import { ActForm } from '@/app/_ui/act-form';
import { shownDate, shownTime } from '@/app/_ui/shown-date';
import { SiteHeader } from '@/app/_ui/site-header';
import ui from '@/app/_ui/ui.module.css';
import { Facts } from '@/app/verify/certificate-shown';
import { findCertificate, listCertificateEvents, type NamedCertificate } from '@/db/queries/certificates';
import { listNames } from '@/db/queries/names';
import { can } from '@/lib/accounts/can';
import { standingFromEvents } from '@/lib/certificates/standing-from-events';
import { stateWord } from '../state-word';
import { changeCertificate } from './actions';

export async function generateMetadata(): Promise<Metadata> {
  const t = await getTranslations('certificates');
  return { title: t('one') };
}

/** One certificate: who holds it, what it rests on, what befell it, and what may be done about it. */
export default page(
  '/certificates/[certificateId]',
  async (permit, { params }: PageProps<'/certificates/[certificateId]'>) => {
    const { certificateId } = await params;
    const row = await findCertificate(database(), certificateId);
    if (!row) notFound();
    const { actor } = permit.session;
    const decides = can(actor, 'certificates.decide', permit.resource);
    const partial = await isPartial(row.organizationId, actor.personId, row.learnerId);
    const events = await listCertificateEvents(database(), [certificateId]);
    const t = await getTranslations('certificates');
    return (
      <>
        <SiteHeader />
        <main id="main" className={`${ui.page} ${ui.narrow}`}>
          <h1>{t('of', { holder: row.holder ?? t('erased'), scheme: row.scheme.text.en.name })}</h1>
          <section className={`${ui.panel} ${ui.stack}`} aria-label={t('one')}>
            <Facts facts={await factsOf(row, events)} />
          </section>
          <History events={events} organizationId={row.organizationId} />
          {decides && partial && <p className={ui.notice}>{t('partial')}</p>}
          {decides && !partial && <Acts certificateId={certificateId} code={standingFromEvents(events).code} />}
        </main>
      </>
    );
  },
);

type Events = Awaited<ReturnType<typeof listCertificateEvents>>;

async function factsOf(row: NamedCertificate, events: Events) {
  const t = await getTranslations('certificates');
  const settings = await readSettings(row.organizationId);
  const [issuer] = await listNames(database(), row.organizationId, [row.issuedBy]);
  return [
    { term: t('state'), text: t(`states.${stateWord(row, events, new Date())}`) },
    { term: t('number'), text: row.id },
    { term: t('version'), text: String(row.scheme.version) },
    { term: t('issuedBy'), text: issuer?.name ?? t('erased') },
    { term: t('from'), text: shownDate(row.issuedAt, settings) },
    { term: t('until'), text: shownDate(row.expiresAt, settings) },
    { term: t('because'), text: row.comment || '–' },
  ];
}

async function History({ events, organizationId }: { events: Events; organizationId: string }) {
  const settings = await readSettings(organizationId);
  const t = await getTranslations('certificates');
  const told = events.flatMap(({ kind, ...rest }) => (kind === 'consent' ? [] : [{ ...rest, kind }]));
  return (
    <section className={`${ui.panel} ${ui.stack}`} aria-labelledby="history">
      <h2 id="history">{t('historyTitle')}</h2>
      {told.length === 0 && <p>{t('nothingBefell')}</p>}
      <ol className={ui.stack}>
        {told.map(({ id, kind, reason, at, doer }) => (
          <li key={id}>
            <strong>{t(`befell.${kind}`)}</strong> {shownTime(at, settings)}, {doer ?? t('erased')}
            {kind !== 'superseded' && `: ${reason}`}
          </li>
        ))}
      </ol>
    </section>
  );
}

async function Acts({ certificateId, code }: { certificateId: string; code: string }) {
  const acts = actsAt(code);
  const t = await getTranslations('certificates');
  if (acts.length === 0) return null;
  return (
    <section className={`${ui.panel} ${ui.stack}`} aria-labelledby="acts">
      <h2 id="acts">{t('actsTitle')}</h2>
      <p className={ui.prose}>{t('reasonBody')}</p>
      {acts.map((act) => (
        <Act key={act} certificateId={certificateId} act={act} />
      ))}
    </section>
  );
}

async function Act({ certificateId, act }: { certificateId: string; act: StatusAct }) {
  const t = await getTranslations('certificates');
  const problems = await getTranslations('problems');
  return (
    <details>
      <summary>{t(`acts.${act}`)}</summary>
      <ActForm className={ui.stack} action={changeCertificate} submit={t(`acts.${act}`)} failed={problems('no-answer')}>
        <input type="hidden" name="certificateId" value={certificateId} />
        <input type="hidden" name="act" value={act} />
        <p className={ui.prose}>{t(`actBodies.${act}`)}</p>
        <label className={ui.field}>
          <span>{t('reason')}</span>
          <textarea name="reason" rows={2} required maxLength={300} />
        </label>
      </ActForm>
    </details>
  );
}

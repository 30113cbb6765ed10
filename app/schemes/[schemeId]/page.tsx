import type { Metadata } from 'next';
import Link from 'next/link';
import { notFound } from 'next/navigation';
import { getTranslations } from 'next-intl/server';
import { catalogue } from '@/app/_server/catalogue';
import { database } from '@/app/_server/database';
import { page } from '@/app/_server/guard';
import { settingsFor } from '@/app/_server/organization-settings';
import { organizationOf } from '@/app/_server/permit';
import { listSchemeHistory } from '@/app/_server/schemes';
import lines from '@/app/_ui/lines.module.css';
import { SafetyNote } from '@/app/_ui/safety-note';
import { SiteHeader } from '@/app/_ui/site-header';
import ui from '@/app/_ui/ui.module.css';
import { can } from '@/lib/accounts/can';
import { Applying } from './applying';
import { Characteristics } from './characteristics';
import { Line } from './line';
import { SchemeHistory } from './scheme-history';
import { SchemeRules } from './scheme-rules';
import { WhatIsShown } from './what-is-shown';

export async function generateMetadata(): Promise<Metadata> {
  const t = await getTranslations('schemes');
  return { title: t('one') };
}

/** All that is published of a certificate, in its newest version or in the one that `version` names. */
export default page(
  '/schemes/[schemeId]',
  async (permit, { params, searchParams }: PageProps<'/schemes/[schemeId]'>) => {
    const { schemeId } = await params;
    const asked = (await searchParams).version;
    const history = await listSchemeHistory(database(), organizationOf(permit), schemeId);
    const shown = history.find(({ scheme }) => String(scheme.version) === asked) ?? history[0];
    if (!shown) notFound();
    const { scheme } = shown;
    const { en } = scheme.text;
    const settings = await settingsFor(permit.session);
    const t = await getTranslations('schemes');
    const isNewest = shown === history[0];
    const { actor } = permit.session;
    const mayHold = actor.roles.includes('learner');
    return (
      <>
        <SiteHeader note={t('version', { number: scheme.version })} />
        <main id="main" className={`${ui.page} ${ui.narrow}`}>
          <h1>{en.name}</h1>
          {!isNewest && <p className={ui.notice}>{t('older')}</p>}
          <p className={ui.small}>{t('wording')}</p>
          <section className={`${ui.panel} ${ui.ticket} ${ui.stack}`} aria-labelledby="claim">
            <h2 id="claim">{t('claimTitle')}</h2>
            <p>{en.claim}</p>
            <h3>{t('notForTitle')}</h3>
            <p>{en.notFor}</p>
            {scheme.source.kind === 'assumed' && <p className={ui.small}>{scheme.source.because}</p>}
          </section>
          <WhatIsShown scheme={scheme} />
          <Line scheme={scheme} settings={settings} />
          <Characteristics scheme={scheme} found={catalogue().characteristics.get(scheme.id)} />
          <SchemeRules scheme={scheme} />
          {isNewest && mayHold && <Applying scheme={scheme} permit={permit} />}
          <SchemeHistory history={history} shown={shown} settings={settings} />
          {isNewest && can(actor, 'schemes.change', permit.resource) && (
            <p>
              <Link className={lines.way} href={`/schemes/${schemeId}/change`} prefetch={false}>
                {t('change')}
              </Link>
            </p>
          )}
          <SafetyNote />
          <p>
            <Link className={lines.way} href="/schemes" prefetch={false}>
              {t('back')}
            </Link>
          </p>
        </main>
      </>
    );
  },
);

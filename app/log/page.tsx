import type { Metadata } from 'next';
import Link from 'next/link';
import { getTranslations } from 'next-intl/server';
import { database } from '@/app/_server/database';
import { page } from '@/app/_server/guard';
import { readSettings } from '@/app/_server/organization-settings';
import { organizationOf } from '@/app/_server/permit';
import { SiteHeader } from '@/app/_ui/site-header';
import ui from '@/app/_ui/ui.module.css';
import { listLogEntries } from '@/db/queries/log-entries';
import { listMemberNames, type Named } from '@/db/queries/names';
import { entryTeller } from './entry-teller';
import styles from './log.module.css';
import { LogFilterForm } from './log-filter';
import { type LogNames, readLogNames } from './log-names';
import { LogTable } from './log-table';
import { CONSOLE, type LogQuery, logAddress, parseLogQuery } from './parse-log-query';

const PAGE = 100;
/** As many people as one can choose from. */
const PEOPLE = 500;

export async function generateMetadata(): Promise<Metadata> {
  const t = await getTranslations('log');
  return { title: t('title') };
}

export default page('/log', async (permit, { searchParams }: PageProps<'/log'>) => {
  const organizationId = organizationOf(permit);
  const settings = await readSettings(organizationId);
  const { filter, asked, ignored } = parseLogQuery(await searchParams, settings.timeZone);
  const found = await listLogEntries(database(), organizationId, filter, PAGE + 1);
  const entries = found.slice(0, PAGE);
  const names = await readLogNames(organizationId, entries, peopleAsked(asked));
  const tellerFor = await entryTeller();
  const t = await getTranslations('log');
  const people = withAsked(await listMemberNames(database(), organizationId, PEOPLE), asked, names, t('erased'));
  return (
    <>
      <SiteHeader />
      <main id="main" className={ui.page}>
        <h1>{t('title')}</h1>
        <section className={`${ui.panel} ${ui.stack}`} aria-labelledby="filter">
          <h2 id="filter">{t('filterTitle')}</h2>
          {ignored.length > 0 && (
            <p role="status" className={ui.notice}>
              {t('ignored', { fields: ignored.map((field) => t(`fields.${field}`)).join(', ') })}
            </p>
          )}
          <LogFilterForm asked={asked} people={people} />
        </section>
        <section className={`${ui.panel} ${ui.stack}`} aria-labelledby="entries">
          <h2 id="entries">{t('entriesTitle')}</h2>
          <p className={ui.small}>{t('body', { timeZone: settings.timeZone })}</p>
          {entries.length === 0 ? (
            <p>{t('none')}</p>
          ) : (
            <LogTable entries={entries} teller={tellerFor(names)} settings={settings} />
          )}
          <WaysOn asked={asked} lastSeq={found.length > PAGE ? entries.at(-1)?.seq : undefined} />
        </section>
      </main>
    </>
  );
});

async function WaysOn({ asked, lastSeq }: { asked: LogQuery['asked']; lastSeq: number | undefined }) {
  const t = await getTranslations('log');
  const { before, ...rest } = asked;
  return (
    <p className={styles.ways}>
      {Object.keys(rest).length > 0 && (
        <Link href="/log" prefetch={false}>
          {t('all')}
        </Link>
      )}
      {before && (
        <Link href={logAddress('/log', rest)} prefetch={false}>
          {t('newest')}
        </Link>
      )}
      {lastSeq !== undefined && (
        <Link href={logAddress('/log', { ...rest, before: String(lastSeq) })} prefetch={false}>
          {t('older')}
        </Link>
      )}
      <a href={logAddress('/log/export', rest)} download>
        {t('export')}
      </a>
    </p>
  );
}

function peopleAsked({ actor, person }: LogQuery['asked']): string[] {
  return [actor, person].filter((id): id is string => id !== undefined && id !== CONSOLE);
}

/** People to choose from, with those that are asked for even where they are gone. */
function withAsked(people: readonly Named[], asked: LogQuery['asked'], names: LogNames, erased: string): Named[] {
  const missing = peopleAsked(asked).filter((id) => !people.some((one) => one.id === id));
  return [...people, ...[...new Set(missing)].map((id) => ({ id, name: names.get(id) ?? erased }))];
}

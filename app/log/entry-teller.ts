import { getTranslations } from 'next-intl/server';
import type { LogEntry } from '@/db/queries/log-entries';
import { logEvents } from '@/lib/accounts/log-events';
import { roles } from '@/lib/accounts/roles';
import { settled } from '../settings/parse-settings';
import type { LogNames } from './log-names';

/** Says what entries of the log tell of. */
export interface EntryTeller {
  actor: (entry: LogEntry) => string;
  /** Null where it was done to nobody. */
  person: (entry: LogEntry) => string | null;
  sentence: (entry: LogEntry) => string;
  /** What more is told, as pairs of words. */
  details: (entry: LogEntry) => { name: string; value: string }[];
}

/** The words once, for any names. */
export async function entryTeller(): Promise<(names: LogNames) => EntryTeller> {
  const t = await getTranslations('log');
  const valueTold = await valueTeller();
  return (names) => {
    const nameOf = (id: string) => names.get(id) ?? t('erased');
    const actor = ({ actorId }: LogEntry) => (actorId === null ? t('console') : nameOf(actorId));
    const person = ({ personId }: LogEntry) => (personId === null ? null : nameOf(personId));
    return {
      actor,
      person,
      sentence: (entry) => {
        const event = logEvents.find((known) => known === entry.event);
        if (!event) return t('unknownEvent', { event: entry.event });
        const told = t(`sentences.${event}`, { actor: actor(entry), person: person(entry) ?? t('nobody') });
        return [t('console'), t('erased')].some((start) => told.startsWith(start)) ? capitalised(told) : told;
      },
      details: (entry) =>
        Object.entries(entry.details).map(([key, value]) => ({
          name: isDetail(key) ? t(`details.${key}`) : key,
          value: [value]
            .flat()
            .map((one) => valueTold(one, names))
            .join(', '),
        })),
    };
  };
}

function capitalised(text: string): string {
  return text.charAt(0).toUpperCase() + text.slice(1);
}

const detailList = [
  'attempt',
  'part',
  'points',
  'assignment',
  'changed',
  'class',
  'count',
  'event',
  'actor',
  'person',
  'from',
  'to',
  'everywhere',
  'file',
  'format',
  'invitation',
  'organization',
  'picture',
  'place',
  'question',
  'roles',
  'score',
  'sessionId',
  'set',
  'sitting',
  'takenBack',
  'version',
] as const;
type DetailName = (typeof detailList)[number];

function isDetail(key: string): key is DetailName {
  return (detailList as readonly string[]).includes(key);
}

type DetailValue = string | number | boolean;

/** Words for one value of a detail: of what the interface has words for, else as it is. */
async function valueTeller(): Promise<(value: DetailValue, names: LogNames) => string> {
  const t = await getTranslations('log');
  const roleNames = await getTranslations('roles');
  const settingNames = await getTranslations('settings.labels');
  return (value, names) => {
    if (typeof value === 'boolean') return value ? t('yes') : t('no');
    if (typeof value === 'number') return String(value);
    const role = roles.find((known) => known === value);
    if (role) return roleNames(role);
    const setting = settled.find((known) => known === value);
    if (setting) return settingNames(setting);
    const event = logEvents.find((known) => known === value);
    return event ? t(`events.${event}`) : (names.get(value) ?? value);
  };
}

import { getTranslations } from 'next-intl/server';
import { trainingSet } from '@/lib/readiness/train-next';
import { itemFault } from '@/lib/sets/item-faults';
import type { SetBody } from '@/lib/sets/set-body';
import { catalogue } from '../catalogue';
import { database } from '../database';
import { findProfile } from '../profiles';
import { topicNames } from './topic-names';

/** Longest title that a set may have. */
const LONGEST = 120;

/** A set of training for topics of a profile, out of an address; undefined where it names none. */
export async function proposedTraining(
  organizationId: string,
  { train, profile: profileId }: { train: unknown; profile: unknown },
): Promise<SetBody | undefined> {
  if (typeof train !== 'string' || typeof profileId !== 'string') return undefined;
  const profile = await findProfile(database(), organizationId, profileId);
  const named = new Set(train.split(','));
  const topics = profile?.topics.filter(({ topic }) => named.has(topic)) ?? [];
  if (topics.length === 0) return undefined;
  const t = await getTranslations('sets');
  const title = t('trainingTitle', { topics: topics.map(({ topic }) => topicNames()(topic)).join(', ') });
  const words = { title: title.length > LONGEST ? `${title.slice(0, LONGEST - 1)}…` : title, note: t('trainingNote') };
  return trainingSet(topics, words, (item) => itemFault(item, catalogue()) === undefined);
}

import { getTranslations } from 'next-intl/server';
import type { RoleProfile } from '@/lib/readiness/profile';
import type { Obstacle } from '@/lib/readiness/sign-off';
import { topicNames } from './topic-names';

/** What stands in the way of a sign-off, and what would settle it. */
export async function obstacleSentence(obstacle: Obstacle, { handsOn }: RoleProfile): Promise<string> {
  const t = await getTranslations('readiness.report.obstacles');
  switch (obstacle.code) {
    case 'topic':
      return t(`topic.${obstacle.missing}`, { topic: topicNames()(obstacle.topic) });
    case 'unsafe':
      return t('unsafe', { events: obstacle.events });
    case 'too-few-cases':
      return t('too-few-cases', { more: obstacle.more });
    case 'hands-on-old':
      return t('hands-on-old', { days: obstacle.days });
    case 'hands-on-below': {
      const item = handsOn?.find(({ id }) => id === obstacle.item)?.text.en;
      return t('hands-on-below', { item: item ?? obstacle.item });
    }
    default:
      return t(obstacle.code);
  }
}

import type { RoleProfile } from '@/lib/readiness/profile';

/** A role profile as it is being typed. */
export interface ProfileDraft {
  name: string;
  about: string;
  topics: readonly TopicDraft[];
  refuse: string;
  minimum: string;
  maximum: string;
  clean: string;
  atLeast: string;
  recentDays: string;
  validMonths: string;
  minutes: string;
  /** Nothing has to be seen where there are none. */
  handsOn: readonly HandsOnDraft[];
}

export interface TopicDraft {
  id: string;
  topic: string;
  cut: string;
  confidence: string;
}

export interface HandsOnDraft {
  id: string;
  topic: string;
  text: string;
  outOf: string;
  pass: string;
}

export function draftOf(profile: RoleProfile): ProfileDraft {
  const { text, topics, handsOn, safety } = profile;
  const numbers = Object.fromEntries(numberFields.map((field) => [field, String(profile[field])]));
  return {
    ...text.en,
    ...(numbers as Record<(typeof numberFields)[number], string>),
    clean: String(safety.clean),
    atLeast: String(safety.atLeast),
    topics: topics.map(({ topic, cut, confidence }) => ({
      id: topic,
      topic,
      cut: String(cut),
      confidence: String(confidence),
    })),
    handsOn: (handsOn ?? []).map(({ id, topic, outOf, pass, text: words }) => ({
      id,
      topic,
      text: words.en,
      outOf: String(outOf),
      pass: String(pass),
    })),
  };
}

export const numberFields = ['refuse', 'minimum', 'maximum', 'recentDays', 'validMonths', 'minutes'] as const;

/** An id that no row has yet. */
export function newRowId(rows: readonly { id: string }[]): string {
  let number = rows.length + 1;
  while (rows.some(({ id }) => id === `row-${number}`)) number++;
  return `row-${number}`;
}

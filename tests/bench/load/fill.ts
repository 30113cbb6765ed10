import { sql } from 'drizzle-orm';
import type { Db } from '@/db/client';
import { harbour, people } from '../../support/people';

/** Acts that an invented past attempt has. */
const ACTS_EACH = 20;

/**
 * Fills the tables up to so many stored acts, in finished attempts of other learners and of the one whose pages are
 * measured, whose own share is the same at every size: a college grows by people, not by one person's cases.
 */
export async function fillUp(db: Db, total: number): Promise<void> {
  const [row] = await db.all<{ acts: number }>(sql`select count(*) as acts from acts`);
  const missing = Math.max(0, Math.ceil((total - (row?.acts ?? 0)) / ACTS_EACH));
  await db.run(sql`
    with recursive n(i) as (select 1 union all select i + 1 from n where i < ${missing})
    insert into attempts (id, learner_id, organization_id, key, case_code, generator_version, content_hash, demo, coached, created_at)
    select printf('past%016x', i + ${total}), printf('load-learner-%d', i % 200), ${harbour.id}, printf('past-%d', i + ${total}),
      'AAA-AAAA-AA', 1, 'past', 0, 0, 1700000000000 + i
    from n where ${missing} > 0`);
  await db.run(sql`
    with recursive s(j) as (select 1 union all select j + 1 from s where j < ${ACTS_EACH})
    insert into acts (attempt_id, seq, key, kind, body, created_at)
    select a.id, j, printf('past-%d', j), 'reading', ${READING}, a.created_at + j * 60000
    from attempts a, s where a.content_hash = 'past' and not exists (select 1 from acts where attempt_id = a.id)`);
  await db.run(sql`
    insert into calls (attempt_id, seq, key, body, grade, total, called_at)
    select a.id, ${ACTS_EACH + 1}, 'call', '{}', '{}', 70, a.created_at + 3600000
    from attempts a where a.content_hash = 'past' and not exists (select 1 from calls where attempt_id = a.id)`);
  await db.run(sql`
    insert into log_entries (at, organization_id, actor_id, event, person_id, details)
    select called_at, ${harbour.id}, ${people.administrator.id}, 'signed-in', ${people.administrator.id}, '{}'
    from calls where key = 'call' and called_at > coalesce((select max(at) from log_entries where event = 'signed-in'), 0)`);
}

const READING = JSON.stringify({
  kind: 'reading',
  check: 'prime-pressure',
  condition: 'key-on',
  instrument: 'dial-0-30-psi',
  minutes: 12,
  shown: [{ kind: 'value', quantity: 'pressure', value: 10, unit: 'psi' }],
});

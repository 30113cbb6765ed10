import { integer, sqliteTable, text } from 'drizzle-orm/sqlite-core';
import type { OrganizationSettings } from '../../lib/accounts/settings';

/** A shop or a college. Spelled as better-auth spells it, which keeps its roles and the one being worked in. */
export const organizations = sqliteTable('organizations', {
  id: text().primaryKey(),
  name: text().notNull(),
  /** Its short name, which user names end in. */
  slug: text().notNull().unique(),
  /** Always null. */
  logo: text(),
  /** Always null; what an organisation settles for itself is in `settings`. */
  metadata: text(),
  /** Null until changed: the usual settings. */
  settings: text({ mode: 'json' }).$type<OrganizationSettings>(),
  /** Invented, with invented people, and shown as such. */
  demo: integer({ mode: 'boolean' }).notNull().default(false),
  createdAt: integer({ mode: 'timestamp_ms' }).notNull(),
});

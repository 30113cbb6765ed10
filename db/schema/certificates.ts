import { index, integer, sqliteTable, text, unique } from 'drizzle-orm/sqlite-core';
import type { Consent } from '../../lib/certificates/consent';
import type { Standing } from '../../lib/readiness/intake-outcome';
import type { Scheme } from '../../lib/readiness/scheme';
import { organizations } from './organizations';
import { applications } from './schemes';

/** Keys that an organisation signs certificates with. The newest that is neither retired nor compromised signs. */
export const issuerKeys = sqliteTable(
  'issuer_keys',
  {
    /** Thumbprint of the public key. */
    kid: text().primaryKey(),
    organizationId: text()
      .notNull()
      .references(() => organizations.id),
    publicJwk: text({ mode: 'json' }).$type<Readonly<Record<string, string>>>().notNull(),
    /** Sealed with the installation's secret. */
    sealedPrivate: text().notNull(),
    createdBy: text().notNull(),
    createdAt: integer({ mode: 'timestamp_ms' }).notNull(),
    /** From then on it signs nothing more, but what it signed stands. */
    retiredAt: integer({ mode: 'timestamp_ms' }),
    /** From then on nothing that it signed can be believed. */
    compromisedAt: integer({ mode: 'timestamp_ms' }),
  },
  (table) => [index('issuer_keys_of_organization').on(table.organizationId, table.createdAt)],
);

export const certificates = sqliteTable(
  'certificates',
  {
    /** Random, as in the certificate's address. */
    id: text().primaryKey(),
    organizationId: text()
      .notNull()
      .references(() => organizations.id),
    learnerId: text().notNull(),
    schemeId: text().notNull(),
    scheme: text({ mode: 'json' }).$type<Scheme>().notNull(),
    applicationId: text().references(() => applications.id),
    /** What the decision rested on. */
    standing: text({ mode: 'json' }).$type<Standing>().notNull(),
    /** The signed credential. */
    jwt: text().notNull(),
    kid: text()
      .notNull()
      .references(() => issuerKeys.kid),
    /** Place in the organisation's status lists. */
    statusIndex: integer().notNull(),
    consent: text({ mode: 'json' }).$type<Consent>().notNull(),
    comment: text().notNull(),
    issuedBy: text().notNull(),
    issuedAt: integer({ mode: 'timestamp_ms' }).notNull(),
    expiresAt: integer({ mode: 'timestamp_ms' }).notNull(),
    demo: integer({ mode: 'boolean' }).notNull().default(false),
  },
  (table) => [
    unique('certificates_status_once').on(table.organizationId, table.statusIndex),
    index('certificates_of_learner').on(table.learnerId, table.organizationId),
    index('certificates_of_organization').on(table.organizationId, table.issuedAt),
  ],
);

export const certificateEventKinds = ['suspended', 'lifted', 'revoked', 'superseded', 'consent'] as const;

/** What befell a certificate after it was issued. Rows are added and never changed. */
export const certificateEvents = sqliteTable(
  'certificate_events',
  {
    id: text().primaryKey(),
    certificateId: text()
      .notNull()
      .references(() => certificates.id),
    kind: text({ enum: certificateEventKinds }).notNull(),
    reason: text().notNull(),
    by: text().notNull(),
    at: integer({ mode: 'timestamp_ms' }).notNull(),
  },
  (table) => [index('certificate_events_of').on(table.certificateId, table.at)],
);

/** Showings of a certificate to somebody who asked with a number of theirs. Each is good once. */
export const presentations = sqliteTable(
  'presentations',
  {
    id: text().primaryKey(),
    certificateId: text()
      .notNull()
      .references(() => certificates.id),
    nonce: text().notNull(),
    audience: text().notNull(),
    madeAt: integer({ mode: 'timestamp_ms' }).notNull(),
    endsAt: integer({ mode: 'timestamp_ms' }).notNull(),
    /** Null until it was checked. */
    usedAt: integer({ mode: 'timestamp_ms' }),
  },
  (table) => [unique('presentations_once').on(table.certificateId, table.nonce)],
);

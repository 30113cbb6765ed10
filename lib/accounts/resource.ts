import type { Role } from './roles';

/** What an action is done to, as far as permission depends on it. */
export type Resource =
  /** Belongs to nobody: the front page. */
  | { kind: 'public' }
  /** A person's own sign-in, whatever the organisation. */
  | { kind: 'account'; personId: string }
  | { kind: 'organization'; organizationId: string }
  /** Work of a person's, done in an organisation. */
  | { kind: 'work'; organizationId: string; personId: string }
  /** A person as a member of an organisation. */
  | { kind: 'member'; organizationId: string; personId: string; roles: readonly Role[]; ownSignIn: boolean }
  | { kind: 'installation' };

/** A member's `ownSignIn` says that nobody here may change how they sign in: they belong elsewhere too, or are a keeper. */
export type MemberResource = Extract<Resource, { kind: 'member' }>;

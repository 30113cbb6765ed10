import type { Role } from './roles';

/** Who is asking, as the session says. Null stands for somebody who is not signed in. */
export interface Actor {
  personId: string;
  /** The organisation being worked in; null for somebody who is let into none. */
  organizationId: string | null;
  /** Held in that organisation. */
  roles: readonly Role[];
  /** Every organisation that lets this person in. */
  organizationIds: readonly string[];
  /** Looks after the installation. */
  keeper: boolean;
}

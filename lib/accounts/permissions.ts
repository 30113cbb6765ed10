import type { Role } from './roles';

/**
 * How far a permission reaches.
 * - `self`: what is the person's own, in the organisation being worked in;
 * - `learners`: members of it who are learners and nothing else;
 * - `organization`: all of it.
 */
export type Reach = 'self' | 'learners' | 'organization';

/** Who may do something. What is not named may not. */
export interface Permission extends Partial<Record<Role, Reach>> {
  /** Everybody, signed in or not. */
  anyone?: true;
  /** Everybody signed in, to their own account or to an organisation that lets them in. */
  signedIn?: true;
  /** The keepers of the installation. */
  keeper?: true;
  /** Not to a member who looks after their own sign-in. */
  sparesOwnSignIn?: true;
}

const anyone = { anyone: true } as const;
const signedIn = { signedIn: true } as const;
const keeper = { keeper: true } as const;
const own = { learner: 'self', instructor: 'self', 'shop-lead': 'self', administrator: 'self' } as const;
const staff = { instructor: 'organization', 'shop-lead': 'organization', administrator: 'organization' } as const;
const teaching = { instructor: 'organization', administrator: 'organization' } as const;
const learnersOrAll = { instructor: 'learners', administrator: 'organization' } as const;
const members = {
  learner: 'organization',
  instructor: 'organization',
  'shop-lead': 'organization',
  administrator: 'organization',
} as const;
const shopLead = { 'shop-lead': 'organization', administrator: 'organization' } as const;
const administrator = { administrator: 'organization' } as const;

/** The one table of who may do what. */
export const permissions = {
  'site.see': anyone,
  'site.sign-in': anyone,
  'site.set-up': anyone,
  'link.follow': anyone,
  'class.join': anyone,

  'account.see': signedIn,
  'account.change': signedIn,
  'account.export': signedIn,
  'account.ask-erasure': signedIn,
  'organization.enter': signedIn,

  'case.practise': own,
  'question.practise': own,
  'work.see': own,
  'work.do': own,

  'people.see': staff,
  'member.see': staff,
  'people.add': teaching,
  'people.invite': teaching,
  'member.set-pin': { ...learnersOrAll, sparesOwnSignIn: true },
  'member.rename': { ...learnersOrAll, sparesOwnSignIn: true },
  'member.make-reset-link': { ...administrator, sparesOwnSignIn: true },
  'member.set-roles': administrator,
  'member.deactivate': administrator,
  'member.merge': administrator,
  'member.erase': administrator,
  'member.export': administrator,

  'classes.see': staff,
  'classes.change': teaching,

  'questions.see': teaching,
  'questions.write': teaching,
  'questions.review': teaching,
  'questions.mark': { instructor: 'organization' },
  'picture.see': members,

  'sets.see': teaching,
  'sets.change': teaching,
  'sets.see-unshared': administrator,
  'assignments.see': teaching,
  'assignments.change': teaching,
  'appeal.make': own,
  'review.see': teaching,
  'review.write': { instructor: 'organization' },
  'gradebook.see': staff,
  'gradebook.export': teaching,
  'statistics.see': teaching,
  'marks.change': { instructor: 'organization' },
  'paper.print': teaching,

  'progress.see': own,
  'readiness.see': staff,
  'readiness.sign': { 'shop-lead': 'organization' },
  'observations.write': { instructor: 'organization', 'shop-lead': 'organization' },
  'profiles.change': shopLead,
  'intakes.see': shopLead,
  'intakes.give': shopLead,
  'schemes.see': members,
  'schemes.change': administrator,
  'panels.see': staff,
  'panels.run': administrator,
  'certificate.hold': own,
  'certificates.see': staff,
  'certificates.decide': administrator,
  'certificates.keys': administrator,

  'log.see': administrator,
  'log.export': administrator,
  'settings.see': administrator,
  'settings.change': administrator,

  'installation.see': keeper,
  'installation.back-up': keeper,
  'installation.add-organization': keeper,
} as const satisfies Record<string, Permission>;

export type Action = keyof typeof permissions;

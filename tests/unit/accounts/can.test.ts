import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { Actor } from '@/lib/accounts/actor';
import { can } from '@/lib/accounts/can';
import { type Action, permissions } from '@/lib/accounts/permissions';
import type { MemberResource, Resource } from '@/lib/accounts/resource';
import { type Role, roles } from '@/lib/accounts/roles';

const actions = Object.keys(permissions) as Action[];

/** Somebody of two organisations, who works in the harbour. */
function anActor(changes: Partial<Actor> = {}): Actor {
  return {
    personId: 'ada',
    organizationId: 'harbour',
    roles: [],
    organizationIds: ['harbour', 'college'],
    keeper: false,
    ...changes,
  };
}

function aMember(changes: Partial<MemberResource> = {}): MemberResource {
  return {
    kind: 'member',
    organizationId: 'harbour',
    personId: 'ben',
    roles: ['learner'],
    ownSignIn: false,
    ...changes,
  };
}

/** What anything may be done to, as Ada sees it: the harbour is where she works, the college has her too, the yard not. */
const resources = {
  public: { kind: 'public' },
  'own account': { kind: 'account', personId: 'ada' },
  'other account': { kind: 'account', personId: 'ben' },
  here: { kind: 'organization', organizationId: 'harbour' },
  'college of hers': { kind: 'organization', organizationId: 'college' },
  'strange yard': { kind: 'organization', organizationId: 'yard' },
  'own work': { kind: 'work', organizationId: 'harbour', personId: 'ada' },
  'own work at college': { kind: 'work', organizationId: 'college', personId: 'ada' },
  'own work at yard': { kind: 'work', organizationId: 'yard', personId: 'ada' },
  'other work': { kind: 'work', organizationId: 'harbour', personId: 'ben' },
  'other work at college': { kind: 'work', organizationId: 'college', personId: 'ben' },
  learner: aMember(),
  'learner with own sign-in': aMember({ ownSignIn: true }),
  'learner who teaches': aMember({ roles: ['learner', 'instructor'] }),
  'member without a known role': aMember({ roles: [] }),
  instructor: aMember({ roles: ['instructor'] }),
  administrator: aMember({ roles: ['administrator'] }),
  'administrator with own sign-in': aMember({ roles: ['administrator'], ownSignIn: true }),
  'learner at college': aMember({ organizationId: 'college' }),
  'learner at yard': aMember({ organizationId: 'yard' }),
  installation: { kind: 'installation' },
} as const satisfies Record<string, Resource>;
type ResourceName = keyof typeof resources;

/** What an action is about, by the first half of its name. */
const kinds: Record<string, Resource['kind']> = {
  site: 'public',
  link: 'public',
  class: 'public',
  account: 'account',
  organization: 'organization',
  case: 'work',
  question: 'work',
  work: 'work',
  appeal: 'work',
  people: 'organization',
  member: 'member',
  classes: 'organization',
  questions: 'organization',
  picture: 'organization',
  sets: 'organization',
  assignments: 'organization',
  review: 'organization',
  gradebook: 'organization',
  statistics: 'organization',
  marks: 'organization',
  paper: 'organization',
  progress: 'work',
  certificate: 'work',
  readiness: 'organization',
  observations: 'organization',
  profiles: 'organization',
  intakes: 'organization',
  schemes: 'organization',
  panels: 'organization',
  certificates: 'organization',
  log: 'organization',
  settings: 'organization',
  installation: 'installation',
};

function fits(action: Action, { kind }: Resource): boolean {
  return kinds[action.split('.')[0] ?? ''] === kind;
}

/** All that somebody may do, as `action: thing`. */
function allowedTo(actor: Actor | null, things: Partial<Record<ResourceName, Resource>> = resources): string[] {
  return Object.entries(things)
    .flatMap(([name, resource]) =>
      actions
        .filter((action) => fits(action, resource) && can(actor, action, resource))
        .map((action) => `${action}: ${name}`),
    )
    .sort();
}

type Demand = Partial<Record<ResourceName, readonly Action[]>>;

function pairsOf(...demands: Demand[]): string[] {
  const pairs = demands.flatMap((demand) =>
    Object.entries(demand).flatMap(([name, allowed]) => allowed.map((action) => `${action}: ${name}`)),
  );
  return [...new Set(pairs)].sort();
}

// What is asked for, in the words of whoever runs a shop or a college; not read off the table.
const waysIn: Demand = { public: ['site.see', 'site.sign-in', 'site.set-up', 'link.follow', 'class.join'] };
const ownAccount: Demand = {
  'own account': ['account.see', 'account.change', 'account.export', 'account.ask-erasure'],
};
const signedIn: Demand = {
  ...ownAccount,
  here: ['organization.enter'],
  'college of hers': ['organization.enter'],
};
const practice: Demand = {
  'own work': [
    ...['case.practise', 'question.practise', 'work.see', 'work.do', 'appeal.make'],
    ...['progress.see', 'certificate.hold'],
  ] as Action[],
};
/** Pictures of questions, and what a certificate asks for: the same for everybody who may want one. */
const forAll: Demand = { here: ['picture.see', 'schemes.see'] };
/** Everybody on the staff reads where people stand, and may be asked to judge where the line is. */
const standing: Demand = { here: ['readiness.see', 'panels.see', 'certificates.see'] };
const observing: Demand = { here: ['observations.write'] };
const entrusting: Demand = { here: ['profiles.change', 'intakes.see', 'intakes.give'] };
/** A shop lead's name alone; administrators keep the books. */
const signing: Demand = { here: ['readiness.sign'] };
const certifying: Demand = { here: ['schemes.change', 'panels.run', 'certificates.decide', 'certificates.keys'] };
const everyMember = [
  'learner',
  'learner with own sign-in',
  'learner who teaches',
  'member without a known role',
  'instructor',
  'administrator',
  'administrator with own sign-in',
] as const;
const toEveryMember = (allowed: readonly Action[]): Demand =>
  Object.fromEntries(everyMember.map((name) => [name, allowed]));
const lookingOn: Demand = {
  here: ['people.see', 'classes.see', 'gradebook.see'],
  ...toEveryMember(['member.see']),
};
/** What instructors do, and administrators too who stand in for one; they give no marks. */
const lessons: Demand = {
  here: [
    ...['questions.see', 'questions.write', 'questions.review', 'sets.see', 'sets.change', 'assignments.see'],
    ...['assignments.change', 'review.see', 'gradebook.export', 'statistics.see', 'paper.print'],
  ] as Action[],
};
const marking: Demand = { here: ['questions.mark', 'review.write', 'marks.change'] };
const teaching: Demand = {
  here: ['people.add', 'people.invite', 'classes.change'],
  learner: ['member.set-pin', 'member.rename'],
};
const changingSignIn = ['member.set-pin', 'member.rename', 'member.make-reset-link'] as const satisfies Action[];
const administering: Demand = {
  here: [
    ...['people.see', 'people.add', 'people.invite', 'classes.see', 'classes.change', 'gradebook.see'],
    ...['log.see', 'log.export', 'settings.see', 'settings.change', 'sets.see-unshared'],
  ] as Action[],
  ...toEveryMember([
    'member.see',
    'member.set-roles',
    'member.deactivate',
    'member.merge',
    'member.erase',
    'member.export',
  ]),
};
const changingTheirSignIn: Demand = Object.fromEntries(
  everyMember.filter((name) => !name.endsWith('own sign-in')).map((name) => [name, changingSignIn]),
);
const lookingAfter: Demand = {
  installation: ['installation.see', 'installation.back-up', 'installation.add-organization'],
};

describe('of all there is to do', () => {
  test('a visitor may use the public ways in and nothing else', () => {
    expect(allowedTo(null)).toEqual(pairsOf(waysIn));
  });

  test.each<[Role, Demand[]]>([
    ['learner', []],
    ['instructor', [lookingOn, teaching, lessons, marking, standing, observing]],
    ['shop-lead', [lookingOn, standing, observing, entrusting, signing]],
    ['administrator', [administering, changingTheirSignIn, lessons, standing, entrusting, certifying]],
  ])('%s may do what is asked for, where they work, and nothing else', (role, demands) => {
    const actor = anActor({ roles: [role] });
    expect(allowedTo(actor)).toEqual(pairsOf(waysIn, signedIn, practice, forAll, ...demands));
  });

  test('somebody whom no organisation lets in has their own account alone', () => {
    const closedOut = anActor({ organizationId: null, organizationIds: [] });
    expect(allowedTo(closedOut)).toEqual(pairsOf(waysIn, ownAccount));
  });

  test('a keeper without a role has the installation and their own account', () => {
    expect(allowedTo(anActor({ keeper: true }))).toEqual(pairsOf(waysIn, signedIn, lookingAfter));
  });

  test('one who works in the college does there what they are there, and nothing in the harbour', () => {
    const actor = anActor({ organizationId: 'college', roles: ['learner'] });
    const work: Demand = {
      'own work at college': practice['own work'] ?? [],
      'college of hers': ['picture.see', 'schemes.see'],
    };
    expect(allowedTo(actor)).toEqual(pairsOf(waysIn, signedIn, work));
  });
});

describe('to oneself', () => {
  const self = (role: Role, ownSignIn: boolean) => ({
    actor: anActor({ roles: [role] }),
    resource: aMember({ personId: 'ada', roles: [role], ownSignIn }),
  });

  test.each(changingSignIn)('an administrator may %s, also when they look after their own sign-in', (action) => {
    for (const ownSignIn of [false, true]) {
      const { actor, resource } = self('administrator', ownSignIn);
      expect(can(actor, action, resource)).toBe(true);
    }
  });

  test.each<Role>(['learner', 'instructor', 'shop-lead'])('%s may do no more than to others', (role) => {
    const { actor, resource } = self(role, true);
    const seen = role === 'learner' ? [] : ['member.see'];
    expect(actions.filter((action) => fits(action, resource) && can(actor, action, resource))).toEqual(seen);
  });
});

const organizations = ['harbour', 'college', 'yard'];
const persons = fc.constantFrom('ada', 'ben');
const places = fc.constantFrom(...organizations);
const someRoles = fc.subarray([...roles]);

const actors: fc.Arbitrary<Actor> = fc
  .record({ personId: persons, organizationIds: fc.subarray(organizations), roles: someRoles, keeper: fc.boolean() })
  .chain((person) =>
    fc
      .constantFrom(...person.organizationIds, null)
      .map((organizationId) => ({ ...person, organizationId, roles: organizationId ? person.roles : [] })),
  );

const owned = { organizationId: places, personId: persons };
const anyResource: fc.Arbitrary<Resource> = fc.oneof(
  fc.constant({ kind: 'public' } as const),
  fc.constant({ kind: 'installation' } as const),
  fc.record({ kind: fc.constant('account' as const), personId: persons }),
  fc.record({ kind: fc.constant('organization' as const), organizationId: places }),
  fc.record({ kind: fc.constant('work' as const), ...owned }),
  fc.record({ kind: fc.constant('member' as const), ...owned, roles: someRoles, ownSignIn: fc.boolean() }),
);
const anyAction = fc.constantFrom(...actions);
const toTheWaysIn = new Set<string>(waysIn.public);

describe('whoever asks for whatever', () => {
  test('a further role never takes a permission away', () => {
    fc.assert(
      fc.property(actors, anyAction, anyResource, fc.constantFrom(...roles), (actor, action, resource, role) => {
        fc.pre(can(actor, action, resource));
        expect(can({ ...actor, roles: [...actor.roles, role] }, action, resource)).toBe(true);
      }),
    );
  });

  test('several roles allow what one of them allows, and no more', () => {
    fc.assert(
      fc.property(actors, anyAction, anyResource, (actor, action, resource) => {
        const alone = [[], ...actor.roles.map((role) => [role])];
        const one = alone.some((held) => can({ ...actor, roles: held }, action, resource));
        expect(can(actor, action, resource)).toBe(one);
      }),
    );
  });

  test('nothing of an organisation that does not let them in is theirs to see or change', () => {
    fc.assert(
      fc.property(actors, anyAction, anyResource, (actor, action, resource) => {
        fc.pre(!toTheWaysIn.has(action) && 'organizationId' in resource);
        fc.pre(!('organizationId' in resource && actor.organizationIds.includes(resource.organizationId)));
        expect(can(actor, action, resource)).toBe(false);
      }),
    );
  });

  test('of another organisation of theirs than the one being worked in, they may only enter it', () => {
    fc.assert(
      fc.property(actors, anyAction, anyResource, (actor, action, resource) => {
        fc.pre(!toTheWaysIn.has(action) && action !== 'organization.enter' && fits(action, resource));
        fc.pre('organizationId' in resource && resource.organizationId !== actor.organizationId);
        expect(can(actor, action, resource)).toBe(false);
      }),
    );
  });

  test('nobody changes how somebody else signs in who looks after that themselves', () => {
    const theirs = fc.record({ roles: someRoles, organizationId: places });
    fc.assert(
      fc.property(actors, fc.constantFrom(...changingSignIn), theirs, (actor, action, member) => {
        const resource = aMember({ ...member, personId: 'somebody-else', ownSignIn: true });
        expect(can(actor, action, resource)).toBe(false);
      }),
    );
  });

  test('keepers alone reach the installation', () => {
    fc.assert(
      fc.property(actors, anyAction, (actor, action) => {
        fc.pre(!toTheWaysIn.has(action));
        const expected = actor.keeper && action.startsWith('installation.');
        expect(can(actor, action, { kind: 'installation' })).toBe(expected);
      }),
    );
  });
});

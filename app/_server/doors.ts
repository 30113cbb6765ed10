import type { Action } from '@/lib/accounts/permissions';

/**
 * What stands behind a door, and so which id the door reads before it asks whether one may come in.
 * - `account`: the person's own sign-in;
 * - `organization`: the one being worked in; `chosen-organization`: the one that `organizationId` names;
 * - `own-work`: what the person themselves does, in the organisation being worked in;
 * - `attempt`, `sitting`, `member`, `class`, `invitation`: the one that `attemptId`, `sittingId`, `personId`, `classId`,
 *   `invitationId` names;
 * - `written-question`, `picture`: the one that `questionId`, `pictureId` names;
 * - `set`, `assignment`, `regrade`, `appeal`: the one that `setId`, `assignmentId`, `regradeId`, `appealId` names, as a thing of its
 *   organisation;
 * - `observation`, `sign-off`: the one that `observationId`, `signOffId` names, as a thing of its organisation;
 * - `given-assignment`: the one that `assignmentId` names, as work of the person whom it is given to;
 * - `turn`, `own-appeal`: the one that `turnId`, `appealId` names, as work of whoever it is of;
 * - `intake`: the one that `intakeId` names, as work of whoever it is of; `learners-intake`: the same, as a thing of its organisation;
 * - `learners-attempt`, `learners-sitting`, `learners-turn`: the one that `attemptId`, `sittingId`, `turnId` names, as seen by those
 *   who teach: a thing of its organisation.
 * - `certificate`, `own-certificate`: the one that `certificateId` names, as a thing of its organisation or as work of its holder.
 * - `panel`, `application`: the one that `panelId`, `applicationId` names, as a thing of its organisation; `own-application`: as work
 *   of whoever it is of.
 */
export type Behind =
  | 'public'
  | 'account'
  | 'organization'
  | 'chosen-organization'
  | 'own-work'
  | 'attempt'
  | 'sitting'
  | 'member'
  | 'class'
  | 'invitation'
  | 'written-question'
  | 'picture'
  | 'set'
  | 'assignment'
  | 'given-assignment'
  | 'turn'
  | 'intake'
  | 'learners-intake'
  | 'learners-attempt'
  | 'learners-sitting'
  | 'learners-turn'
  | 'appeal'
  | 'own-appeal'
  | 'regrade'
  | 'panel'
  | 'application'
  | 'own-application'
  | 'certificate'
  | 'own-certificate'
  | 'observation'
  | 'sign-off'
  | 'installation';

interface Door {
  action: Action;
  behind: Behind;
}

/** Pages and downloads, by their address. */
export const routeDoors = {
  '/': { action: 'site.see', behind: 'public' },
  '/api/health': { action: 'site.see', behind: 'public' },
  '/sign-in': { action: 'site.sign-in', behind: 'public' },
  '/set-up': { action: 'site.set-up', behind: 'public' },
  '/invited/[token]': { action: 'link.follow', behind: 'public' },
  '/reset/[token]': { action: 'link.follow', behind: 'public' },
  '/join': { action: 'class.join', behind: 'public' },
  '/start/[token]': { action: 'link.follow', behind: 'public' },
  '/verify': { action: 'site.see', behind: 'public' },
  '/verify/[certificateId]': { action: 'site.see', behind: 'public' },
  '/issuers/[issuerId]': { action: 'site.see', behind: 'public' },
  '/issuers/[issuerId]/keys': { action: 'site.see', behind: 'public' },
  '/issuers/[issuerId]/keys/[kid]': { action: 'site.see', behind: 'public' },
  '/issuers/[issuerId]/status/[purpose]': { action: 'site.see', behind: 'public' },

  '/learn': { action: 'case.practise', behind: 'own-work' },
  '/learn/topics': { action: 'case.practise', behind: 'own-work' },
  '/learn/progress': { action: 'progress.see', behind: 'own-work' },
  '/learn/cases/[attemptId]': { action: 'work.see', behind: 'attempt' },
  '/learn/cases/[attemptId]/debrief': { action: 'work.see', behind: 'attempt' },

  '/learn/assignments/[assignmentId]': { action: 'work.see', behind: 'given-assignment' },
  '/learn/turns/[turnId]': { action: 'work.see', behind: 'turn' },
  '/learn/turns/[turnId]/messages': { action: 'work.see', behind: 'turn' },

  '/learn/intakes/[intakeId]': { action: 'work.see', behind: 'intake' },

  '/learn/questions': { action: 'question.practise', behind: 'own-work' },
  '/learn/sittings/[sittingId]': { action: 'work.see', behind: 'sitting' },

  '/me': { action: 'account.see', behind: 'account' },
  '/me/export/[format]': { action: 'account.export', behind: 'account' },

  '/people': { action: 'people.see', behind: 'organization' },
  '/people/add': { action: 'people.add', behind: 'organization' },
  '/people/import': { action: 'people.add', behind: 'organization' },
  '/people/[personId]': { action: 'member.see', behind: 'member' },
  '/people/[personId]/progress': { action: 'readiness.see', behind: 'member' },
  '/people/[personId]/merge': { action: 'member.merge', behind: 'member' },
  '/people/[personId]/erase': { action: 'member.erase', behind: 'member' },
  '/people/[personId]/export/[format]': { action: 'member.export', behind: 'member' },

  '/classes': { action: 'classes.see', behind: 'organization' },
  '/classes/[classId]': { action: 'classes.see', behind: 'class' },

  '/questions': { action: 'questions.see', behind: 'organization' },
  '/questions/new': { action: 'questions.write', behind: 'organization' },
  '/questions/pictures': { action: 'questions.write', behind: 'organization' },
  '/questions/exchange': { action: 'questions.write', behind: 'organization' },
  '/questions/exchange/package': { action: 'questions.see', behind: 'organization' },
  '/questions/exchange/csv': { action: 'questions.see', behind: 'organization' },
  '/questions/exchange/preview': { action: 'questions.write', behind: 'organization' },
  '/questions/exchange/import': { action: 'questions.write', behind: 'organization' },
  '/questions/to-mark': { action: 'questions.mark', behind: 'organization' },
  '/questions/[questionId]': { action: 'questions.see', behind: 'written-question' },
  '/pictures/[pictureId]': { action: 'picture.see', behind: 'picture' },

  '/gradebook': { action: 'gradebook.see', behind: 'organization' },
  '/gradebook/print': { action: 'gradebook.see', behind: 'organization' },
  '/gradebook/turns': { action: 'gradebook.see', behind: 'organization' },
  '/gradebook/export': { action: 'gradebook.export', behind: 'organization' },
  '/assignments': { action: 'assignments.see', behind: 'organization' },
  '/assignments/new': { action: 'assignments.change', behind: 'organization' },
  '/assignments/[assignmentId]': { action: 'assignments.see', behind: 'assignment' },
  '/assignments/[assignmentId]/live': { action: 'assignments.see', behind: 'assignment' },
  '/assignments/[assignmentId]/live/now': { action: 'assignments.see', behind: 'assignment' },

  '/assignments/[assignmentId]/statistics': { action: 'statistics.see', behind: 'assignment' },
  '/assignments/[assignmentId]/marks': { action: 'marks.change', behind: 'assignment' },

  '/paper': { action: 'paper.print', behind: 'organization' },
  '/paper/[code]': { action: 'paper.print', behind: 'organization' },
  '/paper/[code]/key': { action: 'paper.print', behind: 'organization' },

  '/sets': { action: 'sets.see', behind: 'organization' },
  '/sets/new': { action: 'sets.change', behind: 'organization' },
  '/sets/[setId]': { action: 'sets.see', behind: 'set' },

  '/review': { action: 'review.see', behind: 'organization' },
  '/review/attempts/[attemptId]': { action: 'review.see', behind: 'learners-attempt' },
  '/review/sittings/[sittingId]': { action: 'review.see', behind: 'learners-sitting' },
  '/review/appeals': { action: 'review.see', behind: 'organization' },
  '/review/second-marks': { action: 'review.see', behind: 'organization' },

  '/readiness': { action: 'readiness.see', behind: 'organization' },
  '/readiness/[personId]/[profileId]': { action: 'readiness.see', behind: 'member' },
  '/readiness/[personId]/[profileId]/pdf': { action: 'readiness.see', behind: 'member' },
  '/readiness/[personId]/[profileId]/hands-on': { action: 'observations.write', behind: 'member' },
  '/profiles': { action: 'readiness.see', behind: 'organization' },
  '/profiles/[profileId]': { action: 'readiness.see', behind: 'organization' },

  '/certificates': { action: 'certificates.see', behind: 'organization' },
  '/certificates/keys': { action: 'certificates.keys', behind: 'organization' },
  '/certificates/[certificateId]': { action: 'certificates.see', behind: 'certificate' },
  '/learn/certificates': { action: 'certificate.hold', behind: 'own-work' },
  '/learn/certificates/[certificateId]': { action: 'certificate.hold', behind: 'own-certificate' },
  '/learn/certificates/[certificateId]/signed': { action: 'certificate.hold', behind: 'own-certificate' },
  '/learn/certificates/[certificateId]/pdf': { action: 'certificate.hold', behind: 'own-certificate' },

  '/schemes': { action: 'schemes.see', behind: 'organization' },
  '/schemes/[schemeId]': { action: 'schemes.see', behind: 'organization' },
  '/schemes/applications': { action: 'certificates.see', behind: 'organization' },
  '/schemes/applications/[applicationId]': { action: 'certificates.see', behind: 'application' },
  '/schemes/[schemeId]/change': { action: 'schemes.change', behind: 'organization' },
  '/intakes': { action: 'intakes.see', behind: 'organization' },
  '/intakes/new': { action: 'intakes.give', behind: 'organization' },
  '/intakes/[intakeId]': { action: 'intakes.see', behind: 'learners-intake' },

  '/panels': { action: 'panels.see', behind: 'organization' },
  '/panels/[panelId]': { action: 'panels.see', behind: 'panel' },

  '/log': { action: 'log.see', behind: 'organization' },
  '/log/export': { action: 'log.export', behind: 'organization' },
  '/settings': { action: 'settings.see', behind: 'organization' },
  '/upkeep': { action: 'installation.see', behind: 'installation' },
  '/upkeep/back-ups/[file]': { action: 'installation.back-up', behind: 'installation' },
} as const satisfies Record<string, Door>;

/** What a form or a button sends, by its name. */
export const actionDoors = {
  chooseDisplay: { action: 'site.see', behind: 'public' },

  signIn: { action: 'site.sign-in', behind: 'public' },
  setUp: { action: 'site.set-up', behind: 'public' },
  acceptInvitation: { action: 'link.follow', behind: 'public' },
  setNewPassword: { action: 'link.follow', behind: 'public' },
  joinClass: { action: 'class.join', behind: 'public' },

  startNextPractice: { action: 'case.practise', behind: 'own-work' },
  startRandomCase: { action: 'case.practise', behind: 'own-work' },
  startCaseByCode: { action: 'case.practise', behind: 'own-work' },
  takeReading: { action: 'work.do', behind: 'attempt' },
  writeFinding: { action: 'work.do', behind: 'attempt' },
  callCase: { action: 'work.do', behind: 'attempt' },
  askForHint: { action: 'work.do', behind: 'attempt' },
  startAlike: { action: 'work.do', behind: 'attempt' },

  beginTurn: { action: 'work.do', behind: 'given-assignment' },
  openTask: { action: 'work.do', behind: 'turn' },
  handInTurn: { action: 'work.do', behind: 'turn' },
  readMessage: { action: 'work.do', behind: 'turn' },

  startIntake: { action: 'link.follow', behind: 'public' },
  goOnWithIntake: { action: 'work.do', behind: 'intake' },
  giveIntake: { action: 'intakes.give', behind: 'organization' },
  takeBackIntake: { action: 'intakes.give', behind: 'learners-intake' },
  stopIntake: { action: 'intakes.give', behind: 'learners-intake' },

  startDrill: { action: 'question.practise', behind: 'own-work' },
  startReview: { action: 'question.practise', behind: 'own-work' },
  startCheck: { action: 'question.practise', behind: 'own-work' },
  answerQuestion: { action: 'work.do', behind: 'sitting' },
  saveAnswer: { action: 'work.do', behind: 'sitting' },
  nextQuestion: { action: 'work.do', behind: 'sitting' },
  flagQuestion: { action: 'work.do', behind: 'sitting' },
  handInSitting: { action: 'work.do', behind: 'sitting' },

  signOut: { action: 'account.change', behind: 'account' },
  signOutSession: { action: 'account.change', behind: 'account' },
  signOutElsewhere: { action: 'account.change', behind: 'account' },
  changePassword: { action: 'account.change', behind: 'account' },
  renameSelf: { action: 'account.change', behind: 'account' },
  askErasure: { action: 'account.ask-erasure', behind: 'account' },
  enterOrganization: { action: 'organization.enter', behind: 'chosen-organization' },

  addPerson: { action: 'people.add', behind: 'organization' },
  previewImport: { action: 'people.add', behind: 'organization' },
  importPeople: { action: 'people.add', behind: 'organization' },
  invitePerson: { action: 'people.invite', behind: 'organization' },
  withdrawInvitation: { action: 'people.invite', behind: 'invitation' },
  setPin: { action: 'member.set-pin', behind: 'member' },
  renamePerson: { action: 'member.rename', behind: 'member' },
  makeResetLink: { action: 'member.make-reset-link', behind: 'member' },
  setRoles: { action: 'member.set-roles', behind: 'member' },
  deactivatePerson: { action: 'member.deactivate', behind: 'member' },
  reactivatePerson: { action: 'member.deactivate', behind: 'member' },
  mergePeople: { action: 'member.merge', behind: 'member' },
  erasePerson: { action: 'member.erase', behind: 'member' },

  addClass: { action: 'classes.change', behind: 'organization' },
  renameClass: { action: 'classes.change', behind: 'class' },
  archiveClass: { action: 'classes.change', behind: 'class' },
  giveClassPlace: { action: 'classes.change', behind: 'class' },
  takeClassPlace: { action: 'classes.change', behind: 'class' },
  makeJoinCode: { action: 'classes.change', behind: 'class' },
  setClassZone: { action: 'classes.change', behind: 'class' },
  closeJoinCode: { action: 'classes.change', behind: 'class' },

  createQuestion: { action: 'questions.write', behind: 'organization' },
  previewQuestion: { action: 'questions.write', behind: 'organization' },
  saveQuestion: { action: 'questions.write', behind: 'written-question' },
  retireQuestion: { action: 'questions.write', behind: 'written-question' },
  beginVersion: { action: 'questions.write', behind: 'written-question' },
  approveQuestion: { action: 'questions.review', behind: 'written-question' },
  sendBackQuestion: { action: 'questions.review', behind: 'written-question' },
  markFreeText: { action: 'questions.mark', behind: 'organization' },

  giveAssignment: { action: 'assignments.change', behind: 'organization' },
  changeAssignmentDates: { action: 'assignments.change', behind: 'assignment' },
  giveExtraTime: { action: 'assignments.change', behind: 'assignment' },
  sendNudge: { action: 'assignments.change', behind: 'assignment' },
  archiveAssignment: { action: 'assignments.change', behind: 'assignment' },
  changeMarks: { action: 'marks.change', behind: 'assignment' },
  acceptDifficulties: { action: 'marks.change', behind: 'assignment' },
  undoChange: { action: 'marks.change', behind: 'regrade' },

  createSet: { action: 'sets.change', behind: 'organization' },
  lookOverSet: { action: 'sets.see', behind: 'organization' },
  previewTask: { action: 'sets.see', behind: 'organization' },
  saveSet: { action: 'sets.change', behind: 'set' },
  duplicateSet: { action: 'sets.change', behind: 'set' },
  shareSet: { action: 'sets.change', behind: 'set' },
  unshareSet: { action: 'sets.change', behind: 'set' },
  archiveSet: { action: 'sets.change', behind: 'set' },
  restoreSet: { action: 'sets.change', behind: 'set' },

  commentOnAttempt: { action: 'review.write', behind: 'learners-attempt' },
  commentOnSitting: { action: 'review.write', behind: 'learners-sitting' },
  overridePart: { action: 'review.write', behind: 'learners-attempt' },
  overrideQuestion: { action: 'review.write', behind: 'learners-sitting' },
  giveSecondMark: { action: 'review.write', behind: 'learners-sitting' },
  decideAppeal: { action: 'review.write', behind: 'appeal' },

  appealAttempt: { action: 'appeal.make', behind: 'attempt' },
  appealQuestion: { action: 'appeal.make', behind: 'sitting' },
  withdrawAppeal: { action: 'appeal.make', behind: 'own-appeal' },

  writeObservation: { action: 'observations.write', behind: 'member' },
  takeBackObservation: { action: 'observations.write', behind: 'observation' },
  signOff: { action: 'readiness.sign', behind: 'member' },
  takeBackSignOff: { action: 'readiness.sign', behind: 'sign-off' },
  saveProfile: { action: 'profiles.change', behind: 'organization' },
  retireProfile: { action: 'profiles.change', behind: 'organization' },
  copyProfile: { action: 'profiles.change', behind: 'organization' },

  checkCertificate: { action: 'site.see', behind: 'public' },
  makeIssuerKey: { action: 'certificates.keys', behind: 'organization' },
  compromiseKey: { action: 'certificates.keys', behind: 'organization' },
  issueCertificate: { action: 'certificates.decide', behind: 'organization' },
  changeCertificate: { action: 'certificates.decide', behind: 'certificate' },
  setConsent: { action: 'certificate.hold', behind: 'own-certificate' },
  showCertificate: { action: 'certificate.hold', behind: 'own-certificate' },

  changeScheme: { action: 'schemes.change', behind: 'organization' },
  applyFor: { action: 'certificate.hold', behind: 'own-work' },
  withdrawApplication: { action: 'certificate.hold', behind: 'own-application' },
  decideApplication: { action: 'certificates.decide', behind: 'application' },
  makePanel: { action: 'panels.run', behind: 'organization' },
  movePanelOn: { action: 'panels.run', behind: 'panel' },
  rateTask: { action: 'panels.see', behind: 'panel' },
  adoptCut: { action: 'schemes.change', behind: 'panel' },

  changeSettings: { action: 'settings.change', behind: 'organization' },
  backUpNow: { action: 'installation.back-up', behind: 'installation' },
  addOrganization: { action: 'installation.add-organization', behind: 'installation' },
  inviteFirstAdministrator: { action: 'installation.add-organization', behind: 'installation' },
} as const satisfies Record<string, Door>;

export type RouteDoor = keyof typeof routeDoors;
export type ActionDoor = keyof typeof actionDoors;

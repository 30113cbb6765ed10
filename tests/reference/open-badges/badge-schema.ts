/** JSON Schema, draft 2019-09. */
type Schema = Readonly<Record<string, unknown>>;

/**
 * What the standard asks of an Open Badge, written down as a JSON Schema.
 *
 * @source 1EdTech Open Badges 3.0, `$defs/AchievementCredential` of ob_v3p0_getopenbadgecredentialsresponse_schema.json, which
 *   is the credential's own schema with single values allowed for lists. Every rule of it, without its texts. See README.md.
 */
export const badgeSchema = {
  $ref: '#/$defs/AchievementCredential',
  $defs: {
    Context: { anyOf: [text(), { type: 'object' }] },
    AchievementCredential: object(['@context', 'id', 'type', 'credentialSubject', 'issuer', 'validFrom'], {
      '@context': contexts(),
      type: typesOf([['VerifiableCredential'], ['AchievementCredential', 'OpenBadgeCredential']]),
      ...texts('id', 'name', 'description'),
      ...dates('awardedDate', 'validFrom', 'validUntil'),
      ...many('endorsement', 'EndorsementCredential'),
      ...many('proof', 'Proof'),
      ...many('credentialSchema', 'CredentialSchema'),
      ...many('termsOfUse', 'TermsOfUse'),
      ...many('evidence', 'Evidence'),
      endorsementJwt: compactJws(),
      image: one('Image'),
      credentialSubject: one('AchievementSubject'),
      issuer: one('ProfileRef'),
      credentialStatus: one('CredentialStatus'),
      refreshService: one('RefreshService'),
    }),
    EndorsementCredential: object(['@context', 'type', 'id', 'name', 'credentialSubject', 'issuer', 'validFrom'], {
      '@context': contexts(),
      type: typesOf([['VerifiableCredential'], ['EndorsementCredential']]),
      ...texts('id', 'name', 'description'),
      ...dates('awardedDate', 'validFrom', 'validUntil'),
      credentialSubject: one('EndorsementSubject'),
      issuer: one('ProfileRef'),
      ...many('proof', 'Proof'),
      ...many('credentialSchema', 'CredentialSchema'),
      ...many('termsOfUse', 'TermsOfUse'),
      ...many('evidence', 'Evidence'),
      credentialStatus: one('CredentialStatus'),
      refreshService: one('RefreshService'),
    }),
    EndorsementSubject: object(['id', 'type'], {
      type: typeOf('EndorsementSubject'),
      ...texts('id', 'endorsementComment'),
    }),
    AchievementSubject: object(['type', 'achievement'], {
      type: typeOf('AchievementSubject'),
      ...texts('id', 'licenseNumber', 'narrative', 'role', 'term'),
      ...dates('activityEndDate', 'activityStartDate'),
      creditsEarned: { type: 'number' },
      achievement: one('Achievement'),
      ...many('identifier', 'IdentityObject'),
      image: one('Image'),
      ...many('result', 'Result'),
      source: one('Profile'),
    }),
    Achievement: object(['id', 'type', 'criteria', 'description', 'name'], {
      type: typeOf('Achievement'),
      ...texts('id', 'description', 'fieldOfStudy', 'humanCode', 'name', 'specialization', 'version'),
      achievementType: extensible(
        'Achievement ApprenticeshipCertificate Assessment Assignment AssociateDegree Award Badge BachelorDegree Certificate CertificateOfCompletion Certification CommunityService Competency Course CoCurricular Degree Diploma DoctoralDegree Fieldwork GeneralEducationDevelopment JourneymanCertificate LearningProgram License Membership ProfessionalDoctorate QualityAssuranceCredential MasterCertificate MasterDegree MicroCredential ResearchDoctorate SecondarySchoolDiploma',
      ),
      ...many('alignment', 'Alignment'),
      creator: one('Profile'),
      creditsAvailable: { type: 'number' },
      criteria: one('Criteria'),
      ...many('endorsement', 'EndorsementCredential'),
      endorsementJwt: compactJws(),
      image: one('Image'),
      inLanguage: language(),
      ...many('otherIdentifier', 'IdentifierEntry'),
      ...many('related', 'Related'),
      ...many('resultDescription', 'ResultDescription'),
      tag: oneOrMore(text()),
    }),
    Alignment: object(['type', 'targetName', 'targetUrl'], {
      type: typeOf('Alignment'),
      ...texts('targetCode', 'targetDescription', 'targetName', 'targetFramework', 'targetUrl'),
      targetType: extensible(
        'ceasn:Competency ceterms:Credential CFItem CFRubric CFRubricCriterion CFRubricCriterionLevel CTDL',
      ),
    }),
    Criteria: object([], texts('id', 'narrative')),
    IdentityObject: object(
      ['type', 'hashed', 'identityHash', 'identityType'],
      {
        type: exactly('IdentityObject'),
        hashed: { type: 'boolean' },
        ...texts('identityHash', 'salt'),
        identityType: identifierType(),
      },
      false,
    ),
    IdentifierEntry: object(
      ['type', 'identifier', 'identifierType'],
      { type: exactly('IdentifierEntry'), ...texts('identifier'), identifierType: identifierType() },
      false,
    ),
    Image: object(['id', 'type'], { type: exactly('Image'), ...texts('id', 'caption') }, false),
    Evidence: object(['type'], {
      type: typeOf('Evidence'),
      ...texts('id', 'narrative', 'name', 'description', 'genre', 'audience'),
    }),
    Result: object(['type'], {
      type: typeOf('Result'),
      ...texts('achievedLevel', 'resultDescription', 'value'),
      ...many('alignment', 'Alignment'),
      status: { enum: 'Completed Enrolled Failed InProgress OnHold Provisional Withdrew'.split(' ') },
    }),
    ResultDescription: object(['id', 'type', 'name', 'resultType'], {
      type: typeOf('ResultDescription'),
      ...texts('id', 'name', 'requiredLevel', 'requiredValue', 'valueMax', 'valueMin'),
      ...many('alignment', 'Alignment'),
      allowedValue: oneOrMore(text()),
      resultType: extensible(
        'GradePointAverage LetterGrade Percent PerformanceLevel PredictedScore RawScore Result RubricCriterion RubricCriterionLevel RubricScore ScaledScore Status',
      ),
      ...many('rubricCriterionLevel', 'RubricCriterionLevel'),
    }),
    RubricCriterionLevel: object(['id', 'type', 'name'], {
      type: typeOf('RubricCriterionLevel'),
      ...texts('id', 'description', 'level', 'name', 'points'),
      ...many('alignment', 'Alignment'),
    }),
    Related: object(['id', 'type'], { type: typeOf('Related'), ...texts('id', 'version'), inLanguage: language() }),
    ProfileRef: { anyOf: [one('Profile'), text()] },
    Profile: object(['id', 'type'], {
      type: typeOf('Profile'),
      ...texts('id', 'name', 'url', 'phone', 'description', 'email', 'official', 'familyName', 'givenName'),
      ...texts('additionalName', 'patronymicName', 'honorificPrefix', 'honorificSuffix', 'familyNamePrefix'),
      ...many('endorsement', 'EndorsementCredential'),
      endorsementJwt: compactJws(),
      image: one('Image'),
      address: one('Address'),
      ...many('otherIdentifier', 'IdentifierEntry'),
      parentOrg: one('Profile'),
      dateOfBirth: { type: 'string', format: 'date' },
    }),
    Address: object(['type'], {
      type: typeOf('Address'),
      ...texts('addressCountry', 'addressCountryCode', 'addressRegion', 'addressLocality', 'streetAddress'),
      ...texts('postOfficeBoxNumber', 'postalCode'),
      geo: one('GeoCoordinates'),
    }),
    GeoCoordinates: object(['type', 'latitude', 'longitude'], {
      type: exactly('GeoCoordinates'),
      latitude: { type: 'number' },
      longitude: { type: 'number' },
    }),
    Proof: object(['type'], {
      ...texts(
        'type',
        'cryptosuite',
        'challenge',
        'domain',
        'nonce',
        'proofPurpose',
        'proofValue',
        'verificationMethod',
      ),
      ...dates('created'),
    }),
    CredentialSchema: object(['id', 'type'], texts('id', 'type')),
    CredentialStatus: object(['type'], texts('id', 'type')),
    RefreshService: object(['id', 'type'], texts('id', 'type')),
    TermsOfUse: object(['type'], texts('id', 'type')),
  },
} as const;

function object(required: readonly string[], properties: Schema, additionalProperties = true): Schema {
  return { type: 'object', required, properties, additionalProperties };
}

/** A text, or one in several languages. */
function text(rule: Schema = {}): Schema {
  const string = { type: 'string', ...rule };
  const languages = { propertyNames: { pattern: '^[a-z]{2}(-[A-Z]{2})?$' }, additionalProperties: string };
  return { oneOf: [string, { type: 'object', ...languages }] };
}

function texts(...names: readonly string[]): Schema {
  return Object.fromEntries(names.map((name) => [name, text()]));
}

function dates(...names: readonly string[]): Schema {
  return Object.fromEntries(names.map((name) => [name, { type: 'string', format: 'date-time' }]));
}

function one(name: string): Schema {
  return { $ref: `#/$defs/${name}` };
}

function oneOrMore(item: Schema): Schema {
  return { oneOf: [item, { type: 'array', items: item }] };
}

function many(property: string, name: string): Schema {
  return { [property]: oneOrMore(one(name)) };
}

function exactly(name: string): Schema {
  return text({ enum: [name] });
}

function typeOf(name: string): Schema {
  return typesOf([[name]]);
}

/** A list that has one of each group. */
function typesOf(groups: readonly (readonly string[])[]): Schema {
  const list = groups.map((group) => ({ type: 'array', minItems: 1, contains: { enum: group }, items: text() }));
  return { oneOf: [text(), { allOf: list }] };
}

function extensible(names: string): Schema {
  const own = { type: 'string', pattern: '(ext:)[a-z|A-Z|0-9|.|-|_]+' };
  return { oneOf: [{ type: 'string', enum: names.split(' ') }, own] };
}

function identifierType(): Schema {
  return extensible(
    'name sourcedId systemId productId userName accountId emailAddress nationalIdentityNumber isbn issn lisSourcedId oneRosterSourcedId sisSourcedId ltiContextId ltiDeploymentId ltiToolId ltiPlatformId ltiUserId identifier',
  );
}

function compactJws(): Schema {
  return oneOrMore(text({ pattern: '^[a-zA-Z0-9_-]+\\.[a-zA-Z0-9_-]*\\.[a-zA-Z0-9_-]+$' }));
}

function language(): Schema {
  return text({ pattern: '^[a-z]{2,4}(-[A-Z][a-z]{3})?(-([A-Z]{2}|[0-9]{3}))?$' });
}

function contexts(): Schema {
  const badges = '^https:\\/\\/purl\\.imsglobal\\.org\\/spec\\/ob\\/v3p0\\/context(-3\\.\\d\\.\\d)*\\.json$';
  const places = [{ enum: ['https://www.w3.org/ns/credentials/v2'] }, { type: 'string', pattern: badges }];
  return { oneOf: [one('Context'), { type: 'array', minItems: 2, items: places, additionalItems: one('Context') }] };
}

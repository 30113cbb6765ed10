import { getTranslations } from 'next-intl/server';
import { asItIs, Field } from './field';

/** What somebody new says of themselves and signs in with from now on. */
export async function NewcomerFields({ slug, email }: { slug: string; email?: string | null }) {
  const t = await getTranslations('newcomer');
  return (
    <>
      <Field label={t('name')} name="name" required maxLength={80} autoComplete="name" />
      <Field
        label={t('signInName')}
        rule={t('signInNameRule', { slug })}
        name="signInName"
        required
        maxLength={200}
        defaultValue={email ?? undefined}
        autoComplete="username"
        {...asItIs}
      />
      <Field
        label={t('secret')}
        rule={t('secretRule')}
        name="secret"
        type="password"
        required
        maxLength={200}
        autoComplete="new-password"
      />
    </>
  );
}

import { getTranslations } from 'next-intl/server';
import ui from './ui.module.css';

/** What somebody new says of themselves and signs in with from now on. */
export async function NewcomerFields({ slug, email }: { slug: string; email?: string | null }) {
  const t = await getTranslations('newcomer');
  return (
    <>
      <label className={ui.field}>
        <span>{t('name')}</span>
        <input name="name" required maxLength={80} autoComplete="name" />
      </label>
      <label className={ui.field}>
        <span>{t('signInName')}</span>
        <input
          name="signInName"
          required
          maxLength={200}
          defaultValue={email ?? undefined}
          autoComplete="username"
          autoCapitalize="none"
          spellCheck={false}
          aria-describedby="sign-in-name-rule"
        />
      </label>
      <p id="sign-in-name-rule" className={ui.small}>
        {t('signInNameRule', { slug })}
      </p>
      <label className={ui.field}>
        <span>{t('secret')}</span>
        <input
          name="secret"
          type="password"
          required
          maxLength={200}
          autoComplete="new-password"
          aria-describedby="secret-rule"
        />
      </label>
      <p id="secret-rule" className={ui.small}>
        {t('secretRule')}
      </p>
    </>
  );
}

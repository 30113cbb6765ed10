import type { Metadata } from 'next';
import { getMessages, getTranslations } from 'next-intl/server';
import { formChoices, usualWeights } from '@/app/_server/assignments/form-choices';
import { page } from '@/app/_server/guard';
import { SiteHeader } from '@/app/_ui/site-header';
import ui from '@/app/_ui/ui.module.css';
import { parts } from '@/lib/grading/grade';
import { giveAssignment } from '../actions';
import { FieldForm } from '../field-form';
import { MoreRules } from './more-rules';
import { WhatAndWhen } from './what-and-when';

export async function generateMetadata(): Promise<Metadata> {
  const t = await getTranslations('assignments');
  return { title: t('newTitle') };
}

/** Giving a set to classes and people under rules. */
export default page('/assignments/new', async (permit, { searchParams }: PageProps<'/assignments/new'>) => {
  const { set, like } = await searchParams;
  const choices = await formChoices(permit, { setId: textIn(set), like: textIn(like) }, new Date());
  const t = await getTranslations('assignments');
  const { form } = (await getMessages()).assignments;
  const problems = await getTranslations('problems');
  const words = await getTranslations('debrief.parts');
  const labels = Object.fromEntries(parts.map((part) => [part, words(part)]));
  return (
    <>
      <SiteHeader />
      <main id="main" className={`${ui.page} ${ui.narrow}`}>
        <h1>{t('newTitle')}</h1>
        <p className={ui.prose}>{t('newBody')}</p>
        {choices.sets.length === 0 ? (
          <p className={ui.notice}>{t('noSets')}</p>
        ) : (
          <section className={ui.panel} aria-label={t('newTitle')}>
            <FieldForm
              action={giveAssignment}
              submit={t('give')}
              failed={problems('no-answer')}
              wrongTitle={t('wrongTitle')}
            >
              <WhatAndWhen choices={choices} words={form} />
              <MoreRules first={choices.first.rules} usual={usualWeights()} labels={labels} words={form} />
            </FieldForm>
          </section>
        )}
      </main>
    </>
  );
});

function textIn(value: string | string[] | undefined): string | undefined {
  return typeof value === 'string' && value.length <= 80 ? value : undefined;
}

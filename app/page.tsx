import Link from 'next/link';
import { getTranslations } from 'next-intl/server';
import { catalogue } from './_server/catalogue';
import { drawingOf } from './_server/drawings';
import { page } from './_server/guard';
import { RigDrawing } from './_ui/drawing/rig-drawing';
import { SafetyNote } from './_ui/safety-note';
import { SiteHeader } from './_ui/site-header';
import ui from './_ui/ui.module.css';

export default page('/', async () => {
  const t = await getTranslations('home');
  const [rig] = catalogue().rigs.values();
  return (
    <>
      <SiteHeader />
      <main id="main" className={`${ui.page} ${ui.narrow}`}>
        <section className={`${ui.panel} ${ui.ticket} ${ui.stack}`}>
          <h1>{t('title')}</h1>
          <p className={ui.lead}>{t('lead')}</p>
          <p>
            <Link className={ui.primary} href="/learn" prefetch={false}>
              {t('start')}
            </Link>
          </p>
        </section>
        {rig && (
          <figure className={ui.panel}>
            <RigDrawing rig={rig} drawing={drawingOf(rig.id)} />
            <figcaption className={ui.small}>{t('picture', { name: rig.text.en.name })}</figcaption>
          </figure>
        )}
        <section className={`${ui.panel} ${ui.stack}`} aria-labelledby="how">
          <h2 id="how">{t('howTitle')}</h2>
          <ol className={ui.steps}>
            {([1, 2, 3, 4, 5] as const).map((step) => (
              <li key={step}>{t(`how${step}`)}</li>
            ))}
          </ol>
        </section>
        <section className={`${ui.panel} ${ui.stack}`} aria-labelledby="who">
          <h2 id="who">{t('whoTitle')}</h2>
          <p className={ui.prose}>{t('who')}</p>
        </section>
        <SafetyNote />
      </main>
    </>
  );
});

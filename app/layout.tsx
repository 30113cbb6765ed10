import type { Metadata, Viewport } from 'next';
import localFont from 'next/font/local';
import { getLocale, getTranslations } from 'next-intl/server';
import { readDisplay } from './_server/display';
import { ErrorWords } from './_ui/error-words';
import './_ui/theme.css';

const text = localFont({
  src: '../node_modules/@fontsource-variable/atkinson-hyperlegible-next/files/atkinson-hyperlegible-next-latin-wght-normal.woff2',
  weight: '200 800',
  variable: '--font-text',
});
const mono = localFont({
  src: '../node_modules/@fontsource-variable/atkinson-hyperlegible-mono/files/atkinson-hyperlegible-mono-latin-wght-normal.woff2',
  weight: '200 800',
  variable: '--font-mono',
});

export async function generateMetadata(): Promise<Metadata> {
  const t = await getTranslations('home');
  return { title: { default: 'Faultwright', template: '%s · Faultwright' }, description: t('description') };
}

export const viewport: Viewport = { colorScheme: 'light dark' };

export default async function RootLayout({ children }: { children: React.ReactNode }) {
  const { theme } = await readDisplay();
  const t = await getTranslations('error');
  return (
    <html
      lang={await getLocale()}
      className={`${text.variable} ${mono.variable}`}
      data-theme={theme === 'system' ? undefined : theme}
    >
      <body>
        <ErrorWords title={t('title')} body={t('body')} retry={t('retry')}>
          {children}
        </ErrorWords>
      </body>
    </html>
  );
}

import { getRequestConfig } from 'next-intl/server';
import messages from '@/content/messages/en.json';

declare module 'next-intl' {
  interface AppConfig {
    Locale: 'en';
    Messages: typeof messages;
  }
}

/** The words of the interface. One language so far; another one is another file and a choice made here. */
export default getRequestConfig(() => ({ locale: 'en', messages, timeZone: 'UTC' }));

import createNextIntlPlugin from 'next-intl/plugin';

const withNextIntl = createNextIntlPlugin('./app/_server/messages.ts');

/** Everything comes from this server: no script, font, picture or address of anybody else's. */
const contentSecurity = [
  "default-src 'self'",
  // The framework writes its page data into inline scripts, and React its style attributes into the markup.
  `script-src 'self' 'unsafe-inline'${process.env.NODE_ENV === 'development' ? " 'unsafe-eval'" : ''}`,
  "style-src 'self' 'unsafe-inline'",
  "img-src 'self' data:",
  "object-src 'none'",
  "base-uri 'self'",
  "form-action 'self'",
  "frame-ancestors 'none'",
].join('; ');

/** @type {import('next').NextConfig} */
const config = {
  poweredByHeader: false,
  productionBrowserSourceMaps: false,
  agentRules: false,
  // Types are checked by `npm run typecheck`, which `npm test` runs; a build for use need not wait for them.
  typescript: { ignoreBuildErrors: true },
  experimental: { serverActions: { bodySizeLimit: '64kb' } },
  // Asked for by browsers that have not read as far as the page's own icon.
  rewrites: async () => [{ source: '/favicon.ico', destination: '/icon.svg' }],
  headers: async () => [
    {
      source: '/:path*',
      headers: [
        { key: 'Content-Security-Policy', value: contentSecurity },
        { key: 'X-Content-Type-Options', value: 'nosniff' },
        { key: 'Referrer-Policy', value: 'same-origin' },
      ],
    },
  ],
};

export default withNextIntl(config);

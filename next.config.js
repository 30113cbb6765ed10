import createNextIntlPlugin from 'next-intl/plugin';

const withNextIntl = createNextIntlPlugin('./app/_server/messages.ts');

/** @type {import('next').NextConfig} */
const config = {
  poweredByHeader: false,
  productionBrowserSourceMaps: false,
  agentRules: false,
  // Reads files that lie beside its code.
  serverExternalPackages: ['pdfkit'],
  // Types are checked by `npm run typecheck`, which `npm test` runs; a build for use need not wait for them.
  typescript: { ignoreBuildErrors: true },
  // The most that any action takes; app/_server/http/body.ts says which address takes how much.
  experimental: { serverActions: { bodySizeLimit: '1mb' } },
  // Asked for by browsers that have not read as far as the page's own icon.
  rewrites: async () => [{ source: '/favicon.ico', destination: '/icon.svg' }],
};

export default withNextIntl(config);

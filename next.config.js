import createNextIntlPlugin from 'next-intl/plugin';

const withNextIntl = createNextIntlPlugin('./app/_server/messages.ts');

/** @type {import('next').NextConfig} */
const config = {
  poweredByHeader: false,
  productionBrowserSourceMaps: false,
  experimental: { serverActions: { bodySizeLimit: '64kb' } },
};

export default withNextIntl(config);

import { expect, test } from 'vitest';
import { deviceFrom } from '@/app/me/device';

test.each([
  [
    'Mozilla/5.0 (Windows NT 10.0; Win64; x64) AppleWebKit/537.36 (KHTML, like Gecko) Chrome/130.0.0.0 Safari/537.36 Edg/130.0.0.0',
    { browser: 'Edge', system: 'Windows' },
  ],
  [
    'Mozilla/5.0 (Linux; Android 14; Pixel 8) AppleWebKit/537.36 (KHTML, like Gecko) Chrome/130.0.0.0 Mobile Safari/537.36',
    { browser: 'Chrome', system: 'Android' },
  ],
  [
    'Mozilla/5.0 (iPhone; CPU iPhone OS 18_0 like Mac OS X) AppleWebKit/605.1.15 (KHTML, like Gecko) Version/18.0 Mobile/15E148 Safari/604.1',
    { browser: 'Safari', system: 'iPhone' },
  ],
  [
    'Mozilla/5.0 (iPad; CPU OS 18_0 like Mac OS X) AppleWebKit/605.1.15 (KHTML, like Gecko) FxiOS/132.0 Mobile/15E148 Safari/605.1.15',
    { browser: 'Firefox', system: 'iPad' },
  ],
  ['Mozilla/5.0 (X11; Linux x86_64; rv:132.0) Gecko/20100101 Firefox/132.0', { browser: 'Firefox', system: 'Linux' }],
])('the device behind %s is told', (userAgent, device) => {
  expect(deviceFrom(userAgent)).toEqual(device);
});

test.each([null, '', 'curl/8.5.0', '<script>Firefox</script>'])('%j is no device that has words', (userAgent) => {
  expect(deviceFrom(userAgent)).toBeUndefined();
});

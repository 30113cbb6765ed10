import { explainFailure } from './explain-failure';

const dev = process.argv.includes('--dev');
Object.assign(process.env, { NODE_ENV: dev ? 'development' : 'production', NEXT_TELEMETRY_DISABLED: '1' });

/** Loaded only now, because the framework goes by what is set above, and wrong settings stop the loading. */
import('../_server/http/start').then(({ start }) => start({ dev })).catch(explainFailure);

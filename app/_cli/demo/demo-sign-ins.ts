import { formatUserName } from '@/lib/accounts/sign-in-name';
import type { Demo } from './demo-content';

/** Who one may be in the demo and how to sign in as them, a line for each. */
export function demoSignIns({ name, shortName, password, pin, ...people }: Demo): string {
  const { administrator, instructors, shopLead, apprentices } = people;
  const learner = apprentices.find(({ handPlayed }) => handPlayed) ?? apprentices[0];
  const rows = [
    ['administrator', administrator.name, administrator.address, `password  ${password}`],
    ['instructor', instructors[0]?.name, instructors[0]?.address, `password  ${password}`],
    ['shop lead', shopLead.name, shopLead.address, `password  ${password}`],
    [
      'apprentice',
      learner?.name,
      formatUserName({ handle: learner?.handle ?? '', slug: shortName }),
      `PIN       ${pin}`,
    ],
  ];
  const widths = [0, 1, 2].map((column) => Math.max(...rows.map((row) => row[column]?.length ?? 0)));
  const lines = rows.map((row) => `  ${row.map((cell = '', column) => cell.padEnd(widths[column] ?? 0)).join('   ')}`);
  return [`Demo sign-ins at ${name}; it and everybody in it are invented:`, ...lines].join('\n');
}

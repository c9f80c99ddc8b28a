/**
 * One seed for all random tests, so that the same commit always gives the same result. To look further:
 *
 *     SEED=12345 npx vitest run --project unit        another seed
 *     SEED=random npx vitest run --project unit       a new one each time, printed with the test
 */
import fc from 'fast-check';

const FIXED = 20261125;
const wanted = process.env['SEED'];

if (wanted !== 'random') fc.configureGlobal({ ...fc.readConfigureGlobal(), seed: Number(wanted ?? FIXED) });

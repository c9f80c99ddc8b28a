/** The person's own limits hold for what the first picture tells as well as for the full list. Inches. */
import { expect, test } from 'vitest';
import type { Thresholds } from '../../../src/model/schema/job-schema.ts';
import { cylinderH, lookAt } from '../../support/cylinder-h.ts';
import { inches, statedInches } from '../../support/values.ts';

test.each([
  ['readings-spread', 'readingsSpread', 0.0015],
  ['plug-readings-spread', 'plugSpread', 0.002],
  ['thin-master-pin', 'thinnestMasterPin', 0.5 / 25.4],
] as const)(
  '%s: told just past the usual limit, not with a wider one of one’s own, and again with a narrower',
  (code, name, usual) => {
    const told = (own: Thresholds[typeof name] | undefined, past: number) => {
      const { evaluation } = lookAt(
        cylinderH((job) => {
          if (own !== undefined) job.settings.thresholds = { [name]: own };
          job.keys[0]!.cuts[0]!.rootDepth = inches(0.369, 0.369 + 0.0015 + past);
          job.cylinders[0]!.bodies[0]!.outerDiameter = inches(0.748, 0.748 + 0.002 + past);
          const driver = job.parts.find((part) => part.label === 'driver 1')!;
          job.parts.push({ ...driver, id: 'thin', length: inches(0.5 / 25.4 - past) });
          job.plans[0]!.stacks[0]!.items.splice(2, 0, { part: 'thin' });
        }),
      );
      return evaluation.findings.some((finding) => finding.code === code);
    };
    const way = name === 'thinnestMasterPin' ? -1 : 1;
    expect(told(undefined, 0.0001)).toBe(true);
    expect(told(undefined, -0.0001)).toBe(false);
    expect(told(statedInches(usual + way * 0.0005), 0.0001)).toBe(false);
    expect(told(statedInches(usual - way * 0.0005), -0.0001)).toBe(true);
  },
);

import { describe, expect, it } from 'vitest';
import { fromDegrees } from '../../src/model/radians.ts';
import { createViewStore } from '../../src/state/view-store.ts';
import { buildJob, changed, joinJobs } from '../support/job-builder.ts';

const one = buildJob();
const two = joinJobs(one, buildJob({ prefix: 'b-', chambers: 3 }));

describe('the view store', () => {
  it('picks the first cylinder with its key and plan', () => {
    expect(createViewStore(two).getState()).toMatchObject({ cylinder: 'cylinder', key: 'key', plan: 'plan' });
  });

  it('picks nothing where there is nothing', () => {
    const empty = changed(one, (job) =>
      Object.assign(job, { cylinders: [], keys: [], seatings: [], plans: [] }),
    );
    expect(createViewStore(empty).getState()).toMatchObject({ cylinder: null, key: null, plan: null });
  });

  it('changes the plan with the cylinder, keeps the key in the hand, and turns the plug upright', () => {
    const store = createViewStore(two);
    store.getState().turnPlug(fromDegrees(90));
    store.getState().pickChamber('chamber-1');
    store.getState().pickCylinder(two, 'b-cylinder');
    expect(store.getState()).toMatchObject({
      cylinder: 'b-cylinder',
      key: 'key',
      plan: 'b-plan',
      pickedChamber: null,
      turn: 0,
    });
  });

  it('stops what plays when a hand moves the key or the plug, never past home', () => {
    const store = createViewStore(one);
    store.getState().play('key in');
    store.getState().playTo({ travel: 4 });
    expect(store.getState()).toMatchObject({ playing: 'key in', travel: 4 });
    store.getState().moveKey(-1);
    expect(store.getState()).toMatchObject({ playing: 'nothing', travel: 0 });
  });

  it('lets go of what the job no longer has, and is silent otherwise', () => {
    const store = createViewStore(two);
    store.getState().pickCylinder(two, 'b-cylinder');
    store.getState().pickKey('b-key');
    store.getState().pickChamber('b-chamber-3');
    let told = 0;
    store.subscribe(() => (told += 1));
    store.getState().follow({ ...two, title: 'Other' });
    expect(told).toBe(0);
    store.getState().follow(one);
    expect(store.getState()).toMatchObject({
      cylinder: 'cylinder',
      key: 'key',
      plan: 'plan',
      pickedChamber: null,
    });
  });

  it('opens another job with its key home', () => {
    const store = createViewStore(one);
    store.getState().moveKey(12);
    store.getState().goTo('check');
    store.getState().open(buildJob({ prefix: 'c-' }));
    expect(store.getState()).toMatchObject({ cylinder: 'c-cylinder', travel: 0, station: 'check' });
  });

  it('shows each kind of part in its own way', () => {
    const store = createViewStore(one);
    store.getState().setShowing('shell', 'see through');
    expect(store.getState().showing).toMatchObject({ shell: 'see through', plug: 'show' });
    expect(createViewStore(one).getState().showing.shell).toBe('show');
  });
});

/** The worker's side without the worker: keeps recipes and solids between requests and answers each one. */
import type { ManifoldToplevel } from 'manifold-3d';
import { known } from '../model/assert.ts';
import { SolidsKernel } from './manifold-kernel.ts';
import type { Recipe } from './recipe.ts';
import type { SolidsReply, SolidsRequest } from './solids-messages.ts';

export class SolidsSession {
  readonly #kernel: SolidsKernel;
  readonly #recipes = new Map<string, Recipe>();

  constructor(library: ManifoldToplevel) {
    this.#kernel = new SolidsKernel(library);
  }

  answer(request: SolidsRequest): Extract<SolidsReply, { kind: 'made' }> {
    for (const { recipeKey, recipe } of request.recipes) this.#recipes.set(recipeKey, recipe);
    const keep = new Set(request.keep);
    this.#kernel.keepOnly(keep);
    for (const key of this.#recipes.keys()) if (!keep.has(key)) this.#recipes.delete(key);
    const meshes = request.orders.map(({ meshKey, recipeKey, plane }) => {
      const recipe = known(this.#recipes.get(recipeKey), 'recipe of an ordered mesh');
      return { meshKey, buffers: this.#kernel.buffers(this.#kernel.make(recipe, recipeKey), plane) };
    });
    return { kind: 'made', request: request.request, meshes, madeCount: this.#kernel.madeCount };
  }
}

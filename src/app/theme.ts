/** Puts the preferences that style sheets ask for on the page: theme, large targets, veiled lengths. */
import type { PreferencesStore } from '../state/preferences-store.ts';

export function startTheme(preferences: PreferencesStore): () => void {
  const apply = () => {
    const { theme, bench, veil } = preferences.getState();
    const { dataset } = document.documentElement;
    if (theme === 'system') delete dataset['theme'];
    else dataset['theme'] = theme;
    dataset['bench'] = bench;
    dataset['veil'] = veil;
  };
  apply();
  return preferences.subscribe(apply);
}

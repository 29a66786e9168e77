export type ThemeChoice = 'system' | 'light' | 'dark';

const key = 'rungbench-theme';
const systemDark = matchMedia('(prefers-color-scheme: dark)');

/** What this person chose, or `system`. Blocked storage reads as `system`. */
export function themeChoice(): ThemeChoice {
  try {
    const kept = localStorage.getItem(key);
    return kept === 'light' || kept === 'dark' ? kept : 'system';
  } catch {
    return 'system';
  }
}

/** Remembers the choice where the browser allows it, and shows it. */
export function chooseTheme(choice: ThemeChoice): void {
  try {
    if (choice === 'system') localStorage.removeItem(key);
    else localStorage.setItem(key, choice);
  } catch {
    // shown for now, forgotten at the next visit
  }
  show(choice);
}

/** Shows the kept choice and follows the system from then on. Called once, first thing. */
export function followTheme(): void {
  show(themeChoice());
  systemDark.addEventListener('change', () => show(themeChoice()));
  window.addEventListener('storage', (event) => {
    if (event.key === key) show(themeChoice());
  });
}

function show(choice: ThemeChoice): void {
  const dark = choice === 'dark' || (choice === 'system' && systemDark.matches);
  document.documentElement.dataset.theme = dark ? 'dark' : 'light';
}

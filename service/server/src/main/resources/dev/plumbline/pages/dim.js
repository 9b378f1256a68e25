// SPDX-License-Identifier: Apache-2.0
// The switch for a dark room: dim instead of glaring. No module, so that the page is dim before it is first painted. The
// choice stays in this browser; nothing else is kept there.
(() => {
  const root = document.documentElement;
  const show = (on) => {
    root.dataset.room = on ? 'dark' : 'light';
    document.getElementById('dim')?.setAttribute('aria-pressed', String(on));
  };
  const read = () => {
    try {
      return localStorage.getItem('plumbline-room');
    } catch {
      return null; // a browser that keeps nothing; the system's preference holds
    }
  };
  const wish = matchMedia('(prefers-color-scheme: dark)');
  const isDark = () => (read() ?? (wish.matches ? 'dark' : 'light')) === 'dark';
  show(isDark());
  wish.addEventListener('change', () => show(isDark()));
  document.addEventListener('DOMContentLoaded', () => {
    show(isDark());
    document.getElementById('dim').addEventListener('click', () => {
      const on = root.dataset.room !== 'dark';
      show(on);
      try {
        localStorage.setItem('plumbline-room', on ? 'dark' : 'light');
      } catch {
        // holds until the page is left
      }
    });
  });
})();

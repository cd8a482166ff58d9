(() => {
  // Asks for the page as it is by now, and puts what is new in its place, until nothing is open.
  const ask = async () => {
    let now;
    try {
      const answer = await fetch(location.pathname, {cache: 'no-store'});
      if (!answer.ok) {
        return;
      }
      now = new DOMParser().parseFromString(await answer.text(), 'text/html');
    } catch {
      return;
    }
    for (const part of document.querySelectorAll('[data-fresh], [data-waiting]')) {
      const fresh = now.getElementById(part.id);
      if (fresh && (part.hasAttribute('data-fresh') || !fresh.hasAttribute('data-waiting'))) {
        part.innerHTML = fresh.innerHTML;
        part.removeAttribute('data-waiting');
      }
    }
    document.title = now.title;
    if (document.querySelector('[data-waiting]')) {
      setTimeout(ask, 700);
    } else {
      document.getElementById('parts').setAttribute('aria-busy', 'false');
    }
  };
  setTimeout(ask, 300);
})();

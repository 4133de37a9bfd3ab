// Says how long a code is still good. A reader is told once a minute, not once a second.
const place = document.querySelector("[data-until]");
if (place) {
  const until = Date.parse(place.dataset.until);
  const loaded = Date.now();
  const whole = Math.min(until - loaded, 10 * 60_000);
  // The clock of this machine may be wrong: what counts is how long the page has been here.
  const good = whole > 0 ? whole : 10 * 60_000;
  const say = () => {
    const left = good - (Date.now() - loaded);
    const minutes = Math.ceil(left / 60_000);
    const words = left <= 0 ? place.dataset.over : minutes > 1 ? place.dataset.minutes.replace("{n}", minutes) : left > 30_000 ? place.dataset.minute : place.dataset.soon;
    if (place.textContent !== words) place.textContent = words;
    if (left > 0) setTimeout(say, 5_000);
    else document.querySelector(".code")?.classList.add("over");
  };
  say();
}

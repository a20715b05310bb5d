// The theme's worker that finds words, and before it what the page's own thread would else have to do: the list of all
// words is loaded and read here. Its name is the address of the theme's worker; the list's address comes as a message.

addEventListener("message", async (event) => {
  if (!event.data.index) return;
  event.stopImmediatePropagation();
  const { config, docs } = await (await fetch(event.data.index)).json();
  dispatchEvent(new MessageEvent("message", { data: { type: 0, data: { config, docs, options: { suggest: false } } } }));
});

importScripts(self.name);

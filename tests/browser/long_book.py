"""A book of 20 000 readings in a tab, written past the screens."""

from __future__ import annotations

from playwright.sync_api import Page

#: 20 locations of 10 setups of 10 lights of 10 readings.
FILL = """() => new Promise((resolve, reject) => {
    const opening = indexedDB.open("evenkelvin");
    opening.onerror = reject;
    opening.onsuccess = () => {
        const tx = opening.result.transaction("entries", "readwrite", {durability: "relaxed"});
        const store = tx.objectStore("entries");
        let n = 0;
        const put = (thing, parent, data) => {
            const id = `many-${String(n).padStart(17, "0")}`;
            const at = new Date(Date.UTC(2026, 0, 1) + n * 60e3).toISOString();
            n += 1;
            store.put({id, at, thing, of: id, parent, after: [], data});
            return id;
        };
        const production = put("production", null, {name: "Long"});
        for (let l = 0; l < 20; l += 1) {
            const location = put("location", production, {name: `Location ${l}`});
            for (let s = 0; s < 10; s += 1) {
                const setup = put("setup", location, {name: `Setup ${s}`});
                for (let i = 0; i < 10; i += 1) {
                    const light = put("light", setup, {name: `light ${i}`, lamp: "led"});
                    for (let r = 0; r < 10; r += 1) {
                        const note = i === 7 && r === 3 && l === 5 ? "reading 3 of 100" : "";
                        put("reading", light, {x: "0.38", y: `0.37${r}`, lamp: "led", note,
                            stage: "bare", pack: [], target: {cct_K: "4300", duv: "0"}});
                    }
                }
            }
        }
        tx.oncomplete = () => { opening.result.close(); resolve(n); };
        tx.onerror = reject;
    };
})"""


def fill_with_readings(page: Page) -> None:
    """Put 20 000 readings into the own book; the page takes them up when it is opened again."""
    page.locator("h1").first.wait_for()
    page.evaluate(FILL)

import { mkdirSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { type Studio, artefact, eventually, openStudio, shape } from './studio.js';

describe('the preview for a keyboard and a screen reader', () => {
  let studio: Studio;

  beforeAll(async () => {
    studio = await openStudio({ plan: 'bowl.mahl' });
    await studio.preview.locator(shape('bowl')).waitFor();
    await studio.preview.locator('.findings li').first().waitFor();
  });
  afterAll(() => studio?.workbench.close());

  it('is told as a choice of views, a drawing with its parts, and a list of findings', async () => {
    expect(await studio.preview.locator('body').ariaSnapshot()).toMatchInlineSnapshot(`
      "- document:
        - banner:
          - radiogroup "View":
            - radio "Drawing" [checked]
            - text: Drawing
            - radio "Notan"
            - text: Notan
            - radio "Values"
            - text: Values
            - radio "Colour"
            - text: Colour
            - radio "Squint"
            - text: Squint
            - radio "Mirror"
            - text: Mirror
            - radio "Path"
            - text: Path
            - radio "Emphasis"
            - text: Emphasis
            - radio "Transfer"
            - text: Transfer
            - radio "Palette"
            - text: Palette
            - radio "Sittings"
            - text: Sittings
            - radio "Record"
            - text: Record
          - group "Zoom":
            - button "Zoom out": −
            - status "Zoom": 100 %
            - button "Zoom in": +
            - button "Fit"
            - button "Picture"
          - search:
            - combobox "Find an object or lead"
          - button "More"
          - group "Draw by hand":
            - 'button "Draw: rectangle"'
            - 'button "Draw: ellipse"'
            - 'button "Draw: outline"'
            - 'button "Draw: lead"'
            - button "Snap to the division" [pressed]
            - button "Keys": "?"
          - group "What is marked": Click a thing in the drawing to change it
          - status
        - main:
          - 'group "Bowl on a cloth: drawing 40 × 30 cm. Objects: bowl 11 % and cloth 39 %. Dominant: bowl. Focal point on the upper right crossing of the golden section. Values: dark 39 % (wanted 50 %), middle 0 % (wanted 40 %) and light 61 % (wanted 10 %). Colours: dominant 39 % (wanted 70 %), complement 11 % (wanted 20 %) and discord 0 % (wanted 10 %). Centre of weight 2 % of the width right of the middle. Six things to look at."':
            - group "In the drawing. Arrow keys go from one to the next, Enter selects its words, Alt and an arrow key moves it, G goes to its handles.":
              - button "Ground, bare on 50 % of the picture, step 4, line 4"
              - button "Focal point, on the upper right crossing of the golden section, line 5"
              - 'button "Value budget: Dark measured 39 %, wanted 50 % within 5 %; Middle measured 0 %, wanted 40 % within 5 %; Light measured 61 %, wanted 10 % within 5 %, line 7"'
              - 'button "Cloth: background, 39 % of the picture, step 2 of 5 and slate (dominant), line 12"'
              - 'button "Bowl: dominant, middle plane, 11 % of the picture, step 5 of 5 and cream (complement), line 18"'
              - 'button "Lead: edge, line 23"'
            - text: "Bowl on a cloth Drawing 40 × 30 cm Value scale % of the picture 1 – 2 39 3 – 4 50 5 11 dark middle light Values wanted ± 5 % Dark 39 %, wanted 50 % Middle 0 %, wanted 40 % Light 61 %, wanted 10 % Colours wanted ± 5 % Dominant 39 %, wanted 70 % Complement 11 %, wanted 20 % Discord 0 %, wanted 10 % focal point, upper right crossing of the golden section lead: edge division: golden section centre of weight 2 % of the width right of the middle bare ground, 50 %, step 4 colours are washed thinly over the ground"
          - region "Findings":
            - heading "Findings" [level=2]
            - paragraph: 4 warnings, 2 hints
            - list:
              - listitem:
                - 'button "Warning: The darks cover 38.8 % of the picture; the budget is 50 % within 5 %. Most of it is cloth (38.8 %). Bring 11.2 % more of the picture onto its steps, from the lights (51.2 % too much). line 7"'
              - listitem:
                - 'button "Warning: The middle values cover 0 % of the picture; the budget is 40 % within 5 %. Nothing lies on its steps yet: bring 40 % of the picture there, from the lights (51.2 % too much). line 7"'
              - listitem:
                - 'button "Warning: The lights cover 61.2 % of the picture; the budget is 10 % within 5 %. Most of it is bowl (11.3 %). Take 51.2 % of the picture to the darks (11.2 %) and the middle values (40 %). line 7"'
              - listitem:
                - 'button "Warning: cream is to be the complement, but its hue is yellow; opposite the dominant blue lies orange, 61° away on the painters’ wheel, and up to 30° counts as opposite. With chroma 2 it is nearly a grey, in which another hue hardly shows: call it neutral, or choose a colour of chroma 3 or more near orange. line 10"'
              - listitem:
                - 'button "Hint: The dominant colour covers 38.8 % of the picture, the complement 11.3 % and the discords 0 %; the usual shares are 70 %, 20 % and 10 %, each within 5 %. The dominant colour is farthest off. Give it 31.2 % more of the picture: use the colour elsewhere too. Or mean it so, and write budget colour dominant 38%, complement 11% within 5%. line 9"'
              - listitem:
                - 'button "Hint: Bare ground shows on 50 % of the picture, where no object lies; up to 2 % is let pass. Lay an object behind it, in the background; or, when the ground is meant to show, set this aside with the reason. line 4"'
        - status"
    `);
  });

  it('can be gone through with Tab, what has the focus always to be seen', async () => {
    const { page, preview, focused } = studio;
    await preview.locator('.views input:checked').focus();
    const here = () =>
      preview.locator('*:focus').evaluate((element) => {
        const ring = element.matches('input[type="radio"]')
          ? (element.nextElementSibling ?? element)
          : element;
        const line = element.querySelector('.line');
        const style = getComputedStyle(line ?? ring);
        const { top, bottom } = element.getBoundingClientRect();
        const bar = document.querySelector('.bar')?.getBoundingClientRect().bottom ?? 0;
        return {
          role: element.getAttribute('role') ?? element.localName,
          ring: line === null ? style.outlineStyle : style.stroke,
          inSight: element.closest('.bar') !== null || (bottom > bar && top < window.innerHeight),
        };
      });
    const walk = [await here()];
    const next = async () => {
      await page.keyboard.press('Tab');
      walk.push(await here());
    };
    // The tools come before the drawing, in which Tab has one stop, and the list of findings after it.
    for (let step = 0; step < 30 && (await focused()).length === 0; step++) await next();
    expect(walk.length).toBeGreaterThan(10);
    await next();
    await next();
    expect(walk.slice(-3).map(({ role }) => role)).toEqual(['button', 'button', 'button']);
    expect(walk.filter(({ ring, inSight }) => ring === 'none' || !inSight)).toEqual([]);
    await page.keyboard.press('Shift+Tab');
    await page.keyboard.press('Shift+Tab');
    expect(await focused()).toHaveLength(1);
  });

  it('has its drawing gone through by arrow keys; Enter selects the words', async () => {
    const { focused, page, preview, selection } = studio;
    const [first] = await focused();
    const seen = [first];
    for (let step = 0; step < 12 && (await focused())[0] !== 'object:bowl'; step++) {
      await page.keyboard.press('ArrowDown');
      seen.push(...(await focused()));
    }
    expect(new Set(seen).size).toBe(seen.length);
    const item = preview.locator('.outlines g:focus');
    expect(await item.getAttribute('aria-label')).toMatch(/^Bowl: .*, line 18$/);
    await studio.workbench.screenshot(artefact('preview-focus'));
    await page.keyboard.press('Enter');
    await eventually(selection).toBe('Ln 18, Col 13 (4 selected)');
  });

  it('says what changed once the typing rests, not at each key', async () => {
    const { goTo, page, preview, spoken, type } = studio;
    await preview.locator('.spoken').evaluate((live) => {
      new MutationObserver(() => {
        live.setAttribute('data-said', String(Number(live.getAttribute('data-said')) + 1));
      }).observe(live, { childList: true, characterData: true, subtree: true });
    });
    await goTo('7:22');
    for (const key of ['Backspace', '5', 'Backspace', '6', 'Backspace', '2']) {
      if (key.length > 1) await page.keyboard.press(key);
      else await type(key);
      await page.waitForTimeout(150);
    }
    await eventually(spoken).toMatch(/ now\.$/);
    expect(await preview.locator('.spoken').getAttribute('data-said')).toBe('1');
  });

  it('touches, when a value is typed, only what that is about; the page stays where it was scrolled to', async () => {
    const { goTo, page, preview, type } = studio;
    await goTo('21:12');
    await eventually(studio.current).toEqual(['object:bowl']);
    const scrolled = await preview.locator('html').evaluate((html) => {
      html.scrollTo(0, 120);
      return html.scrollTop;
    });
    expect(scrolled).toBe(120);
    await preview.locator('main').evaluate((main) => {
      const touched = new Set<string>();
      const observer = new MutationObserver((records) => {
        for (const { target } of records) {
          const element = target instanceof Element ? target : target.parentElement;
          const mark = element?.closest('[data-subject]')?.getAttribute('data-subject');
          const part = element?.closest('[data-layer], .outlines, section');
          const place = part?.getAttribute('data-layer') ?? part?.getAttribute('class');
          touched.add(
            `${place}: ${mark ?? element?.closest('[data-key]')?.getAttribute('data-key') ?? element?.localName}`,
          );
        }
        document.body.setAttribute('data-touched', [...touched].sort().join('\n'));
      });
      observer.observe(main, { subtree: true, childList: true, characterData: true, attributes: true });
    });
    const fill = () => preview.locator(shape('bowl')).getAttribute('fill');
    const before = await fill();
    await page.keyboard.press('Backspace');
    await type('4');
    await eventually(fill).not.toBe(before);
    await eventually(studio.spoken).toMatch(/ now\.$/);
    // The drawing of a bowl without a value may come in between.
    let touched: readonly string[] = [];
    await eventually(async () => {
      touched = (await preview.locator('body').getAttribute('data-touched'))?.split('\n') ?? [];
      return touched;
    }).toContain('captions: budget:value');
    expect(touched.filter((place) => /^(picture|outlines|names): /.test(place))).toEqual([
      'names: object:bowl',
      'outlines: object:bowl',
      'picture: object:bowl',
    ]);
    // Another value is another weight: the plumb line moves, and the mount stays.
    expect(touched.filter((place) => /mount|title:|cloth|lead:/.test(place))).toEqual([
      'mount: balance',
      'mount: balance:bob',
      'mount: balance:plumb',
    ]);
    expect(await preview.locator('html').evaluate((html) => html.scrollTop)).toBe(120);
  });

  it('follows the setting of rules while it is open, and agrees with Problems', async () => {
    const { findings, page, workbench } = studio;
    const told = async () => (await findings()).join('\n');
    const counts = async () => {
      const all = await told();
      const count = (grade: string) => all.match(new RegExp(`${grade}: `, 'gu'))?.length ?? 0;
      return `Warnings: ${count('Warning')}, Infos: ${count('Hint')}`;
    };
    const problems = () => page.locator('[id="status.problems"]').getAttribute('aria-label');
    const settings = path.join(workbench.folder, '.vscode');
    mkdirSync(settings, { recursive: true });
    const set = (rules: object) =>
      writeFileSync(path.join(settings, 'settings.json'), JSON.stringify({ 'mahlstick.rules': rules }));

    const before = await told();
    expect(before).toMatch(/Warning: The darks cover [^]*Warning: cream [^]*Hint: Bare ground /u);
    set({ 'value budget': 'off', 'bare ground': 'warning', 'complement off opposite': { limit: 70 } });
    await eventually(told).toMatch(/Warning: Bare ground [^]*Hint: The dominant colour /u);
    expect(await told()).not.toMatch(/The darks cover |cream /u);
    await eventually(problems).toBe(await counts());
    set({});
    await eventually(told).toBe(before);
    await eventually(problems).toBe(await counts());
  });
});

using Microsoft.Playwright;

namespace AutoSweep.Pages.Tests.BenchPage.Support;

/// <summary>What is wrong with a page as the browser has laid it out.</summary>
internal static class Layout
{
    // Text may be wider than its box only where the box scrolls, and where it is there for a screen reader alone.
    private const string Wrong =
        """
        () => {
          const name = one => `${one.tagName.toLowerCase()}${one.id ? '#' + one.id : ''} "${(one.textContent ?? '').trim().replace(/\s+/g, ' ').slice(0, 50)}"`;
          const scrolls = one => ['auto', 'scroll'].includes(getComputedStyle(one).overflowX);
          const isUnseen = one => one.closest('.unseen, .skip, svg, [hidden]') !== null || one.getClientRects().length === 0;
          const isInScroller = one => { for (let up = one; up; up = up.parentElement) if (scrolls(up)) return true; return false; };
          const hasText = one => [...one.childNodes].some(node => node.nodeType === Node.TEXT_NODE && node.textContent.trim() !== '');
          const seen = [...document.body.querySelectorAll('*')].filter(one => !isUnseen(one));
          const wrong = [];
          const width = document.documentElement.scrollWidth;
          if (width > innerWidth) wrong.push(`the page is ${width} px wide`);
          if (document.querySelectorAll('h1').length !== 1) wrong.push(`${document.querySelectorAll('h1').length} h1`);
          for (const one of seen.filter(one => hasText(one) || one.tagName === 'SELECT')) {
            const box = one.getBoundingClientRect();
            if (!isInScroller(one) && (box.right > innerWidth + 1 || box.left < -1)) wrong.push(`beyond the edge: ${name(one)}`);
            if (getComputedStyle(one).display !== 'inline' && !scrolls(one) && one.scrollWidth > one.clientWidth + 1) wrong.push(`cut off: ${name(one)}`);
          }
          for (const text of document.querySelectorAll('svg text')) {
            const [inner, outer] = [text.getBoundingClientRect(), text.ownerSVGElement.getBoundingClientRect()];
            if (inner.left < outer.left - 1 || inner.right > outer.right + 1 || inner.top < outer.top - 1 || inner.bottom > outer.bottom + 1)
              wrong.push(`outside its chart: "${text.textContent}"`);
          }
          return wrong;
        }
        """;

    /// <summary>Everything that is wrong, in words.</summary>
    public static async Task<string[]> WrongAsync(IPage page) => await page.EvaluateAsync<string[]>(Wrong);

    /// <summary>Waits for a state of the page, and tells which of these are then not there, or end below the edge of the screen that is not scrolled.</summary>
    /// <remarks>Waited for and measured in one breath: the page lives, and a state that was seen may be over when it is measured.</remarks>
    /// <param name="page">The page.</param>
    /// <param name="isSo">The state, an expression of JavaScript.</param>
    /// <param name="selectors">What is to be seen.</param>
    public static async Task<string[]> BelowAsync(IPage page, string isSo, IEnumerable<string> selectors)
    {
        var measured = await page.WaitForFunctionAsync(
            "selectors => (" + isSo + """
            ) && selectors
              .map(selector => [selector, document.querySelector(selector)])
              .map(([selector, one]) => [selector, one === null ? Infinity : one.getBoundingClientRect().bottom + scrollY - innerHeight])
              .filter(([, below]) => below > 0)
              .map(([selector, below]) => `${selector} ends ${below.toFixed(0)} px below the screen`)
            """, selectors);
        return await measured.JsonValueAsync<string[]>();
    }
}

using System.Text.Json;

namespace AutoSweep.Pages.Tests.BenchPage.Support;

/// <summary>What a page asks the person for, as it stands there.</summary>
internal sealed record AskedOnPage
{
    /// <summary>The kind of the question that waits once work is over.</summary>
    public const string Over = "Over";

    // A question that was answered stays a moment longer; only another one counts, or the end of the work.
    private const string Look = """
        before => {
          const text = (root, selector) => root.querySelector(selector)?.textContent.trim() ?? '';
          const asked = document.querySelector('main [data-question]');
          if (asked && asked.dataset.question !== before) {
            const place = asked.id === 'value-question' ? document.querySelector('#to-clip') : document.querySelector('#state');
            return JSON.stringify({
              Id: asked.dataset.question,
              Kind: asked.classList.contains('keys') ? 'Key' : asked.id === 'value-question' ? 'Value' : asked.dataset.kind ?? 'Doubt',
              Text: text(asked, asked.id === 'value-question' ? 'label' : '.ask'),
              Output: Number(place?.dataset.output ?? 0),
              Stage: place?.dataset.stage ?? '',
              Dials: [...asked.querySelectorAll('[data-dial]')].map(one => [text(one, '.step').replace('×', '').trim(), one.dataset.dial]),
              Total: text(asked, '.total strong'),
            });
          }
          const isOver = !asked && !document.querySelector('#progress') && document.querySelector('#ended, #all-fitted');
          return isOver ? JSON.stringify({ Kind: 'Over' }) : false;
        }
        """;

    /// <summary>Tells this question from every other.</summary>
    public string Id { get; init; } = "";

    /// <summary>Level, Dials, Box, Doubt, Key, Value or Over.</summary>
    public required string Kind { get; init; }

    /// <summary>The words of a question that has some of its own.</summary>
    public string Text { get; init; } = "";

    /// <summary>The output that it is about.</summary>
    public int Output { get; init; }

    /// <summary>The stage at work.</summary>
    public string Stage { get; init; } = "";

    /// <summary>Each dial: what a step adds, and where it shall stand.</summary>
    public IReadOnlyList<string[]> Dials { get; init; } = [];

    /// <summary>What the page says that the dials add up to.</summary>
    public string Total { get; init; } = "";

    /// <summary>Waits for the question after another one, or for the end of the work.</summary>
    /// <param name="screen">The screen.</param>
    /// <param name="before">The question before; empty at the beginning.</param>
    public static async Task<AskedOnPage> NextAsync(Screen screen, string before)
    {
        AskedOnPage? asked = null;
        await screen.OrTellAsync(async () =>
        {
            var seen = await screen.Page.WaitForFunctionAsync(Look, before);
            asked = JsonSerializer.Deserialize<AskedOnPage>(await seen.JsonValueAsync<string>());
        });
        return asked!;
    }
}

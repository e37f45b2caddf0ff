using System.Globalization;
using System.Text.RegularExpressions;
using AutoSweep.Bench.Tests.Support;
using AutoSweep.Core.Quantities;

namespace AutoSweep.Pages.Tests.BenchPage.Support;

/// <summary>
/// The person at a bench without any wire, with the page before them: does on the panel what the page asks for, reads what the panel shows, and types it on
/// the page. Knows nothing else.
/// </summary>
/// <param name="panel">The simulated bench, <c>autosweep-sim panel</c>.</param>
/// <param name="screen">The page.</param>
internal sealed partial class PageOperator(TypedProgram panel, Screen screen)
{
    private readonly Dictionary<int, double> _slips = [];
    private readonly List<string> _corrected = [];
    private string _shown = "";
    private bool _takesBack;
    private int _levels;

    /// <summary>The page's words where it doubted a level that was misread, and the right one was typed.</summary>
    public IReadOnlyList<string> Corrected => _corrected;

    /// <summary>How many times a level was taken back.</summary>
    public int TakenBack { get; private set; }

    /// <summary>Misreads the level of that number, counted over all stages to come, by a factor: notices it when doubted, or else at the next question.</summary>
    public void Misreads(int number, double factor) => _slips[_levels + number] = factor;

    /// <summary>Answers whatever the page asks until the work is over.</summary>
    public async Task WorkAsync()
    {
        for (var asked = await AskedOnPage.NextAsync(screen, ""); asked.Kind != AskedOnPage.Over; asked = await AskedOnPage.NextAsync(screen, asked.Id))
            await screen.OrTellAsync(() => AnswerAsync(asked));
    }

    /// <summary>Does a stage from its button on the bench to its end.</summary>
    public async Task StageAsync(string button)
    {
        await screen.GoAsync("");
        await screen.PressAsync(button);
        await screen.OrTellAsync(() => screen.Page.WaitForSelectorAsync("#progress"));
        await WorkAsync();
        await screen.EndAsync();
    }

    /// <summary>Measures the drawer, part after part, and types each value.</summary>
    public async Task TakePartsInAsync(int count)
    {
        var asked = "";
        for (var part = 1; part <= count; part++)
        {
            asked = (await AskedOnPage.NextAsync(screen, asked)).Id;
            await TypeValueAsync(await DoAsync($"measure {part}", " nF"));
        }

        await AskedOnPage.NextAsync(screen, asked);
    }

    /// <summary>Measures the parts that the page asks for and solders in those that it says, to the end.</summary>
    public async Task FitAsync()
    {
        for (var asked = await AskedOnPage.NextAsync(screen, ""); asked.Kind != AskedOnPage.Over;)
        {
            await TypeValueAsync(await DoAsync($"measure {Parts(asked.Text)}", " nF"));
            asked = await AskedOnPage.NextAsync(screen, asked.Id);
            await SolderAsync();
        }
    }

    private Task AnswerAsync(AskedOnPage asked) => asked.Kind switch
    {
        "Key" => ClipAsync(asked),
        "Dials" or "Box" or "Level" when _takesBack => TakeBackAsync(),
        "Dials" => DialAsync(asked),
        "Level" => LevelAsync(),
        "Box" => BoxAsync(),
        "Doubt" => AgainAsync(asked),
        _ => throw new InvalidOperationException($"nobody told this person what to do at {asked}"),
    };

    private async Task ClipAsync(AskedOnPage asked)
    {
        await DoAsync(string.Create(CultureInfo.InvariantCulture, $"clip {asked.Output}{(asked.Stage == "Sweep" ? " box" : "")}"), "clipped");
        await screen.PressAsync("It is clipped");
    }

    // As the dials are shown; what the page adds them up to must be the same.
    private async Task DialAsync(AskedOnPage asked)
    {
        var stand = asked.Dials.Sum(dial => TypedCapacitance.Picofarads(dial[0])!.Value * int.Parse(dial[1], CultureInfo.InvariantCulture));
        Assert.Equal(stand, TypedCapacitance.Picofarads(asked.Total));
        await DoAsync(string.Create(CultureInfo.InvariantCulture, $"dial {stand}p"), "dialled");
        await screen.PressAsync("It stands so");
    }

    private async Task LevelAsync()
    {
        _shown = await DoAsync("read", "V");
        if (!_slips.Remove(++_levels, out var factor))
        {
            await TypeAsync(_shown);
            return;
        }

        var shown = _shown.Split(' ');
        await TypeAsync(string.Create(CultureInfo.InvariantCulture, $"{factor * double.Parse(shown[0], CultureInfo.InvariantCulture):0.0###} {shown[1]}"));
        _takesBack = true;
    }

    private async Task BoxAsync() => await TypeAsync(_shown = await DoAsync("measure box", " nF"));

    // Looks again, and types what really stands there; the page may doubt that as well, where a filter is far out of tune.
    private async Task AgainAsync(AskedOnPage asked)
    {
        if (_takesBack)
            _corrected.Add(asked.Text);
        _takesBack = false;
        await TypeAsync(_shown);
    }

    private async Task TakeBackAsync()
    {
        (_takesBack, TakenBack) = (false, TakenBack + 1);
        await screen.PressAsync("Take the last level back");
    }

    private async Task TypeAsync(string text)
    {
        await screen.Page.FillAsync("#answer", text);
        await screen.Page.ClickAsync("#question button[type=submit]");
    }

    private Task TypeValueAsync(string text) => screen.OrTellAsync(async () =>
    {
        await screen.Page.FillAsync("#value", text);
        await screen.Page.ClickAsync("#value-question button[type=submit]");
    });

    private async Task SolderAsync()
    {
        var said = Solder().Match(await screen.Page.InnerTextAsync("#solder .big"));
        Assert.True(said.Success, await screen.Page.InnerTextAsync("main"));
        await DoAsync($"solder {said.Groups[1].Value} {Parts(said.Groups[2].Value)}", "soldered");
    }

    // The drawer's parts are numbered in the order in which they were taken in.
    private static string Parts(string words) => string.Join(' ', PartId().Matches(words).Select(id => id.Groups[1].Value));

    private async Task<string> DoAsync(string what, string expected)
    {
        await panel.TypeAsync(what);
        var seen = await panel.NextAsync();
        Assert.True(seen?.Contains(expected, StringComparison.Ordinal) == true, $"'{what}' at the panel: expected '{expected}', saw '{seen}'");
        return seen!;
    }

    [GeneratedRegex("Output ([0-9]+): solder (.*) in")]
    private static partial Regex Solder();

    [GeneratedRegex("P0*([0-9]+)")]
    private static partial Regex PartId();
}

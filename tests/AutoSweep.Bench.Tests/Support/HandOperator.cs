using System.Globalization;
using System.Text.RegularExpressions;

namespace AutoSweep.Bench.Tests.Support;

/// <summary>
/// The person at a bench without any wire: does on the panel what the worker asks for, reads what the panel shows, and types it. Knows nothing else: no bench
/// file, no journal.
/// </summary>
/// <param name="panel">The simulated bench, <c>autosweep-sim panel</c>.</param>
internal sealed partial class HandOperator(TypedProgram panel)
{
    private readonly Queue<(int At, double Factor)> _slips = new();
    private string _typed = "";
    private bool _boxIn;
    private bool _takesBack;
    private int _levels;
    private (int Output, string Parts) _offered;

    /// <summary>How many levels have been typed since the last command was begun.</summary>
    public int Levels => _levels;

    /// <summary>How many times a level was taken back.</summary>
    public int TakenBack { get; private set; }

    /// <summary>How many rods were moved.</summary>
    public int Moves { get; private set; }

    /// <summary>Misreads the level of that number by a factor, notices it at the next question, and takes it back.</summary>
    public void MisreadsOnce(int at, double factor) => _slips.Enqueue((at, factor));

    /// <summary>Works through one command of the worker to its end.</summary>
    /// <returns>What the terminal showed.</returns>
    public async Task<IReadOnlyList<string>> WorkAsync(params IReadOnlyList<string> command)
    {
        (_boxIn, _levels) = (command[0] == "sweep", 0);
        await using var worker = new TypedProgram(Programs.Worker, command);
        while (await worker.NextAsync() is { } line)
        {
            if (await AnswerAsync(line) is { } answer)
                await worker.TypeAsync(answer);
        }

        Assert.True(await worker.EndAsync() == 0, await worker.TranscriptAsync());
        return worker.Seen;
    }

    /// <summary>Measures the drawer, part after part, as far as the panel knows parts.</summary>
    /// <returns>What the capacitance meter shows of each.</returns>
    public async Task<IReadOnlyList<string>> MeasurePartsAsync(int count)
    {
        List<string> values = [];
        for (var part = 1; part <= count; part++)
            values.Add(await DoAsync($"measure {part}", " nF"));
        return values;
    }

    // None where a line asks for nothing.
    private async Task<string?> AnswerAsync(string line) => line switch
    {
        _ when Clip().Match(line) is { Success: true } clip => await ClipAsync(clip.Groups[1].Value),
        _ when Dial().Match(line) is { Success: true } dial => await DialAsync(dial.Groups[1].Value),
        _ when line.StartsWith("  Enter when it stands so", StringComparison.Ordinal) => MayTakeBack(line) ?? "",
        _ when line.StartsWith("  LEVEL in mV?", StringComparison.Ordinal) => MayTakeBack(line) ?? await LevelAsync(),
        _ when line.StartsWith("  the parts. It shows?", StringComparison.Ordinal) => _typed = await DoAsync("measure box", " nF"),
        _ when line.Contains("the same keeps it", StringComparison.Ordinal) => _typed,
        _ when Offer().Match(line) is { Success: true } offer => await MeasureOfferAsync(offer),
        _ when line.EndsWith("solder it in", StringComparison.Ordinal) => await SolderAsync(),
        _ when Move().Match(line) is { Success: true } move => await MoveAsync(move),
        _ => null,
    };

    private async Task<string> ClipAsync(string output)
    {
        await DoAsync($"clip {output}{(_boxIn ? " box" : "")}", "clipped");
        return "";
    }

    private async Task<string?> DialAsync(string total)
    {
        await DoAsync($"dial {total}n", "dialled");
        return null;
    }

    private string? MayTakeBack(string question)
    {
        if (!_takesBack || !question.Contains("u takes the last level back", StringComparison.Ordinal))
            return null;
        (_takesBack, TakenBack) = (false, TakenBack + 1);
        return "u";
    }

    private async Task<string> LevelAsync()
    {
        _typed = await DoAsync("read", "V");
        _levels++;
        if (!_slips.TryPeek(out var slip) || _levels != slip.At)
            return _typed;
        _slips.Dequeue();
        _takesBack = true;
        var shown = _typed.Split(' ');
        return _typed = string.Create(CultureInfo.InvariantCulture, $"{slip.Factor * double.Parse(shown[0], CultureInfo.InvariantCulture):0.0} {shown[1]}");
    }

    // The drawer's parts are numbered in the order in which they were taken in.
    private async Task<string?> MeasureOfferAsync(Match offer)
    {
        var parts = PartId().Matches(offer.Groups[2].Value).Select(id => int.Parse(id.Groups[1].Value, CultureInfo.InvariantCulture));
        _offered = (int.Parse(offer.Groups[1].Value, CultureInfo.InvariantCulture), string.Join(' ', parts));
        return await DoAsync($"measure {_offered.Parts}", " nF");
    }

    private async Task<string?> SolderAsync()
    {
        await DoAsync($"solder {_offered.Output} {_offered.Parts}", "soldered");
        return null;
    }

    private async Task<string> MoveAsync(Match move)
    {
        var way = move.Groups[2].Value == "OUT" ? "out" : "in";
        await DoAsync($"rod {move.Groups[1].Value} {way} {move.Groups[3].Value}", "locked");
        Moves++;
        return "";
    }

    private async Task<string> DoAsync(string what, string expected)
    {
        await panel.TypeAsync(what);
        var seen = await panel.NextAsync();
        Assert.True(seen?.Contains(expected, StringComparison.Ordinal) == true, $"'{what}' at the panel: expected '{expected}', saw '{seen}'");
        return seen!;
    }

    [GeneratedRegex("Clip output ([0-9]+), then Enter")]
    private static partial Regex Clip();

    [GeneratedRegex(@"^  DIAL .*= ([0-9.]+) nF$")]
    private static partial Regex Dial();

    [GeneratedRegex("^  output +([0-9]+): (.*P[0-9]+.*), wants ")]
    private static partial Regex Offer();

    [GeneratedRegex("P0*([0-9]+)")]
    private static partial Regex PartId();

    [GeneratedRegex("Output ([0-9]+): .* Magnet (IN|OUT) ([0-9.]+) mm")]
    private static partial Regex Move();
}

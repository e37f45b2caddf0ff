using System.Globalization;
using System.Text.Json;
using AutoSweep.Core.Journal;
using AutoSweep.Core.Matching;
using AutoSweep.Core.Quantities;
using AutoSweep.Core.Stock;
using AutoSweep.Worker.Job;
using AutoSweep.Worker.Page.Intake;
using AutoSweep.Worker.Reports;
using AutoSweep.Worker.Stock;

namespace AutoSweep.Worker.Page.Fit;

/// <summary>How far a job's parts are: a fold over its journal and the ledger.</summary>
/// <param name="State">The job.</param>
/// <param name="Stock">The stock.</param>
public sealed record PartsView(JobState State, StockState Stock)
{
    private string Job => StockJob.NameOf(State);

    /// <summary>The outputs that a sweep gave a peak.</summary>
    public IReadOnlyList<MatchTarget> Targets { get; } = MatchTargets.Of(State, 0);

    /// <summary>The lines still to be fitted, bin by bin or output by output: the walk's own order.</summary>
    public IReadOnlyList<Parts.FitLine> Open(bool byBins) => Parts.FitLine.Of(Targets, Stock, Job, byBins);

    /// <summary>The outputs with a peak that have no part in them.</summary>
    public IReadOnlyList<int> NotFitted
    {
        get
        {
            var fitted = Stock.HeldBy(Job, PartStatus.Fitted);
            return [.. Targets.Select(target => target.Output).Where(output => !fitted.ContainsKey(output))];
        }
    }

    /// <summary>The parts to be fetched, each with its output, bin by bin and then by value.</summary>
    public IReadOnlyList<(string Bin, Part Part, int Output)> ToFetch
    {
        get
        {
            var bins = Stock.Bins();
            return [.. Stock.HeldBy(Job, PartStatus.Reserved).SelectMany(held => held.Value.Select(part => (StockView.Bin(part, bins), part, held.Key)))
                .OrderBy(row => row.Item1, StringComparer.Ordinal).ThenBy(row => row.part.Measured.Picofarads)];
        }
    }

    /// <summary>Parts as a person goes to fetch them: part, value, bin.</summary>
    public IReadOnlyList<(string Id, string Value, string Bin)> InHand(IEnumerable<string> ids)
    {
        var bins = Stock.Bins();
        return [.. ids.Where(Stock.Parts.ContainsKey).Select(id => Stock.Parts[id]).Select(part => (part.Id, part.Capacitance.ToString(), StockView.Bin(part, bins)))];
    }

    /// <summary>What the match is proven to be, in a line; none before the first match.</summary>
    public string? Proof => State.Matched is { } match
        ? $"Outputs outside {Text(match.LossLimitDecibels, "0.######")} dB: {Words(match.Outside)}. Parts used: {Words(match.PartsUsed)}. "
            + $"Parts moved since the match before: {Words(match.Moved)}. Total expected loss {Text(match.TotalLoss.Value * 1e-7, "0.00000")} dB; "
            + $"no match with these parts is below {Text(match.TotalLoss.Bound * 1e-7, "0.00000")} dB."
        : null;

    /// <summary>The outputs for which the stock did not suffice at the last match.</summary>
    public IReadOnlyList<int> Without => [.. (State.Matched?.Outputs ?? []).Where(output => output.Parts.Count == 0).Select(output => output.Output)];

    /// <summary>What the last match proposes to buy; none where the stock suffices or its file is gone.</summary>
    public static BuyingList? ToBuy(JobFolder folder)
    {
        var path = folder.PickingList + ".json";
        try
        {
            return File.Exists(path) ? JsonSerializer.Deserialize<PickingList>(File.ReadAllText(path), JournalLine.Json)?.ToBuy : null;
        }
        catch (Exception fault) when (fault is JsonException or IOException or UnauthorizedAccessException)
        {
            return null;
        }
    }

    /// <summary>A line of a buying list in words.</summary>
    public static string Words(BuyingLine line) =>
        $"{line.Quantity.ToString(CultureInfo.InvariantCulture)} × {new Capacitance(line.NominalPicofarads)} {line.ToleranceLetter} ({line.Series}) "
        + $"for output{(line.Outputs.Count == 1 ? "" : "s")} {string.Join(", ", line.Outputs)}"
        + (line.Sure ? "" : "; measure them: one that fits is among so many in 95 of 100 cases");

    private static string Words(LevelProof proof) => proof.IsProven ? $"{proof.Value} (proven least)" : $"{proof.Value} (at least {proof.Bound})";

    private static string Text(double value, string format) => value.ToString(format, CultureInfo.InvariantCulture);
}

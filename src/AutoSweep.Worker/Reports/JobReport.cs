using AutoSweep.Core.Curve;
using AutoSweep.Core.Diagnosis;
using AutoSweep.Worker.Stock;

namespace AutoSweep.Worker.Reports;

/// <summary>The record of a job, folded from its journal: what report.json holds and what the pages print.</summary>
public sealed record JobReport
{
    /// <summary>Version of the format; 1 is the only one.</summary>
    public int Format { get; init; } = 1;

    /// <summary>What the shop calls the job: its folder's name.</summary>
    public required string Job { get; init; }

    /// <summary>When the job was opened.</summary>
    public required DateTimeOffset Opened { get; init; }

    /// <summary>When this report was made.</summary>
    public required DateTimeOffset Made { get; init; }

    /// <summary>Name and version of the program that made it.</summary>
    public required string Software { get; init; }

    /// <summary>The number of the journal's last entry that is in it.</summary>
    public required long LastEntry { get; init; }

    /// <summary>For whom the work was done.</summary>
    public string? Customer { get; init; }

    /// <summary>The instrument that the generator belongs to.</summary>
    public string? Instrument { get; init; }

    /// <summary>Who did it.</summary>
    public ShopSettings? Shop { get; init; }

    /// <summary>The generator.</summary>
    public required ReportGenerator Generator { get; init; }

    /// <summary>The stages that have begun.</summary>
    public required IReadOnlyList<ReportStage> Stages { get; init; }

    /// <summary>The target curve in force.</summary>
    public required TargetCurve Target { get; init; }

    /// <summary>The level curves in figures, in the order of the work.</summary>
    public required IReadOnlyList<ReportStand> Curves { get; init; }

    /// <summary>What the readings say is wrong, or was.</summary>
    public required IReadOnlyList<Finding> Findings { get; init; }

    /// <summary>Every output, in ascending number.</summary>
    public required IReadOnlyList<ReportOutput> Outputs { get; init; }

    /// <summary>The capacitors that were fitted.</summary>
    public required IReadOnlyList<ReportPart> Parts { get; init; }

    /// <summary>The instruments that took the readings.</summary>
    public required IReadOnlyList<ReportInstrument> Instruments { get; init; }

    /// <summary>What was not done, a sentence each.</summary>
    public required IReadOnlyList<string> NotDone { get; init; }

    /// <summary>The record of a job.</summary>
    public static JobReport Of(ReportSource source)
    {
        var (state, entries) = (source.Job.State, source.Job.Entries);
        var (curves, places) = (ReportCurves.Of(state), new JournalPlaces(entries));
        return new()
        {
            Job = source.Job.Name,
            Opened = state.OpenedAt!.Value,
            Made = source.Made,
            Software = AutoSweep.Worker.Software.NameAndVersion,
            LastEntry = state.Sequence,
            Customer = source.Customer,
            Instrument = source.Instrument,
            Shop = source.Shop,
            Generator = ReportGenerator.Of(state.Profile!),
            Stages = ReportStage.Of(state, entries),
            Target = curves.Target,
            Curves = [.. curves.Curves.Zip(curves.Comparisons, ReportStand.Of)],
            Findings = Diagnose.Of(state, source.Stock is { } stock ? OldCapacitors.Of(stock, state) : null),
            Outputs = [.. state.Profile!.Outputs.Select(output => ReportOutput.Of(output, state, curves, places, source.Stock))],
            Parts = ReportPart.Of(state, source.Stock),
            Instruments = ReportInstrument.Of(entries, source.Shop),
            NotDone = ReportGaps.Of(state, source.Stock),
        };
    }
}

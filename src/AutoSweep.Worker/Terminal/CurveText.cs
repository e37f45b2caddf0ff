using System.Globalization;
using AutoSweep.Core.Curve;
using AutoSweep.Core.Journal;
using Spectre.Console;

namespace AutoSweep.Worker.Terminal;

/// <summary>A job's level curves against its target: a table, a plot, and a sum of each.</summary>
public sealed class CurveText
{
    private readonly TargetCurve _target;
    private readonly List<(CurveStand Stand, CurveComparison Comparison, LevelOutliers Outliers)> _stands = [];
    private readonly JobState _state;

    /// <summary>The text of a job.</summary>
    /// <param name="state">A job that has been opened.</param>
    public CurveText(JobState state)
    {
        (_state, _target) = (state, TargetCurve.Of(state));
        foreach (var stand in Enum.GetValues<CurveStand>())
        {
            var curve = LevelCurve.Of(state, stand);
            if (curve.Points.Count > 0)
                Add(stand, CurveComparison.Of(curve, _target));
        }
    }

    /// <summary>A stand's name for people.</summary>
    public static string NameOf(CurveStand stand) => stand switch
    {
        CurveStand.AsFound => "as found",
        CurveStand.AfterRecap => "after recap",
        _ => "as left",
    };

    /// <summary>Writes it.</summary>
    /// <param name="console">Where to.</param>
    /// <param name="onlyOff">Only the outputs that are off the target or off their neighbours in the latest stand.</param>
    public void Write(IAnsiConsole console, bool onlyOff)
    {
        console.WriteLine($"Target: {_target.Name} ({_target.Source}), {_target.Points.Count} of {_state.Profile!.Outputs.Count} outputs.");
        if (_stands.Count == 0)
        {
            console.WriteLine("No level has been read yet: survey the generator first.");
            return;
        }

        console.Write(Table(onlyOff));
        console.Write(DeviationPlot.Draw(_state.Profile!, NameOf(_stands[^1].Stand), _stands[^1].Comparison));
        console.WriteLine();
        foreach (var (stand, comparison, outliers) in _stands)
        {
            console.WriteLine($"{NameOf(stand)}: {Counts(comparison, outliers)}");
            console.WriteLine($"{NameOf(stand)}: overall {Signed(comparison.GainDecibels)} dB over the target; {LumpinessOf(comparison)}.");
        }

        foreach (var step in _stands[^1].Outliers.Steps)
            console.WriteLine($"The curve steps by {Signed(step.Decibels)} dB between outputs {step.Below} and {step.Above}: no outlier, a part of its shape.");
    }

    private void Add(CurveStand stand, CurveComparison comparison) =>
        _stands.Add((stand, comparison, LevelOutliers.Of(_state.Profile!, comparison)));

    private Table Table(bool onlyOff)
    {
        var table = new Table().AddColumns("output", "target mV", "± dB");
        foreach (var (stand, _, _) in _stands)
            table.AddColumns($"{NameOf(stand)} mV", "dB");
        table.AddColumn("remark");
        foreach (var output in _state.Profile!.Outputs.Select(output => output.Number).Where(output => !onlyOff || Remark(output).Length > 0))
            table.AddRow([.. Cells(output).Select(cell => cell.EscapeMarkup())]);
        return table;
    }

    private IEnumerable<string> Cells(int output)
    {
        var target = _target.Points.FirstOrDefault(point => point.Output == output);
        yield return output.ToString(CultureInfo.InvariantCulture);
        yield return Number(target?.Millivolts, "0.00");
        yield return Number(target?.ToleranceDecibels, "0.0#");
        foreach (var (_, comparison, _) in _stands)
        {
            var read = comparison.Deviations.FirstOrDefault(one => one.Output == output);
            yield return Number(read?.Millivolts, "0.00");
            yield return read?.Decibels is { } off ? Signed(off) + (IsOff(read) ? " !" : "") : "";
        }

        yield return Remark(output);
    }

    // Of the latest stand: what was before has been dealt with or will be seen again.
    private string Remark(int output)
    {
        var (_, comparison, outliers) = _stands[^1];
        List<string> remarks = [];
        if (comparison.Deviations.FirstOrDefault(one => one.Output == output) is { } read && IsOff(read))
            remarks.Add(read.Verdict == CurveVerdict.TooLoud ? "too loud" : "too soft");
        if (outliers.Outputs.FirstOrDefault(one => one.Output == output) is { IsOutlier: true } outlier)
            remarks.Add($"outlier: {outlier.Evidence}");
        return string.Join("; ", remarks);
    }

    private static string Counts(CurveComparison comparison, LevelOutliers outliers)
    {
        int Count(CurveVerdict verdict) => comparison.Deviations.Count(one => one.Verdict == verdict);
        return $"{comparison.Deviations.Count} outputs, {Count(CurveVerdict.Within)} within tolerance, {Count(CurveVerdict.TooLoud)} too loud, "
            + $"{Count(CurveVerdict.TooSoft)} too soft, {Count(CurveVerdict.NotCompared)} not compared; outliers: {outliers.Outliers.Count()}.";
    }

    private static string LumpinessOf(CurveComparison comparison) => Lumpiness.Of(comparison) is { } lumps
        ? $"lumpiness {Number(lumps, "0.00")} dB (the readings alone would make {Number(Lumpiness.OfReadingsAlone(comparison), "0.00")} dB)"
        : "too few neighbours for a lumpiness";

    private static bool IsOff(CurveDeviation one) => one.Verdict is CurveVerdict.TooLoud or CurveVerdict.TooSoft;

    private static string Signed(double value) => value.ToString("+0.0;-0.0;0.0", CultureInfo.InvariantCulture);

    private static string Number(double? value, string format) => value?.ToString(format, CultureInfo.InvariantCulture) ?? "";
}

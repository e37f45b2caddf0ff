using System.Globalization;
using AutoSweep.Core.Journal;
using AutoSweep.Core.Peaks;
using AutoSweep.Core.Quantities;
using AutoSweep.Worker.Bench;
using AutoSweep.Worker.Job;
using AutoSweep.Worker.Levelling;
using AutoSweep.Worker.Reports;

namespace AutoSweep.Worker.Terminal;

/// <summary>One line an event, for pipes, logs and step-by-step work.</summary>
/// <param name="output">Where the lines go.</param>
/// <param name="record">The job.</param>
/// <param name="board">The bench's status.</param>
public sealed class LinePrinter(TextWriter output, JobRecord record, BenchBoard board) : IBenchScreen
{
    private string? _said;

    /// <inheritdoc/>
    public async Task ShowAsync(CancellationToken closing)
    {
        record.Appended += Print;
        board.Changed += Say;
        board.Sounded += Ring;
        var closed = new TaskCompletionSource();
        await using (closing.Register(closed.SetResult))
            await closed.Task;
        record.Appended -= Print;
        board.Changed -= Say;
        board.Sounded -= Ring;
    }

    /// <summary>The line of an event; none for one that a person need not see.</summary>
    public static string? Line(JournalEvent what) => what switch
    {
        BenchConnected { FixtureSerial: { } serial } bench => $"Bench: {bench.MeterIdentity} by {bench.MeterDriver}, fixture {serial}",
        BenchConnected bench => $"Bench: {bench.MeterIdentity} by {bench.MeterDriver}",
        InstrumentLost lost => $"Lost: the {MissingWords.Name(lost.Instrument)}. {lost.Found}",
        StageStarted started => $"{started.Stage}: {started.Planned.Count} outputs planned",
        OutputSurveyed surveyed => Level(surveyed),
        OutputSwept { Reason: PeakStopReason.BoundReached } swept => Peak(swept),
        OutputSwept swept => $"{Peak(swept)}  <- {SweepsCsv.Name(swept.Reason)}",
        OutputChecked seen => Text($"  output {seen.Output,3}  {seen.Millivolts,7:0.000} mV, {seen.DifferenceDecibels:+0.00;-0.00;0.00} dB from the prediction{(seen.IsExplained ? "" : "  <- look")}"),
        MagnetRead read => Magnet(read),
        OutputLevelled levelled => Text($"  output {levelled.Output,3}  {MagnetWords.Ending(levelled.Ending)}: {levelled.BeforeMillivolts:0.000} -> {levelled.AfterMillivolts:0.000} mV in {levelled.Moves} moves")
            + (levelled.SlopeDecibelsPerMillimetre is { } slope ? Text($", {slope:0.0} dB/mm") : ""),
        HazardAcknowledged hazard => $"  hazard acknowledged: {hazard.How}",
        OutputAbandoned abandoned => $"  output {abandoned.Output,3}  broken off: {abandoned.Why}",
        StageEnded ended => $"{ended.Stage}: complete",
        _ => null,
    };

    private static string Magnet(MagnetRead read) =>
        Text($"  output {read.Output,3}  {read.Millivolts,7:0.000} mV, {read.Decibels:+0.00;-0.00;0.00} dB")
        + (read.After is { } move ? Text($" after {MagnetWords.Name(move.Direction)} {move.Millimetres:0.000} mm") : " before it is moved");

    private static string Level(OutputSurveyed surveyed)
    {
        var flags = string.Join(' ', surveyed.Flags.Select(SurveyCsv.Name));
        return Text($"  output {surveyed.Output,3}  {Tone(surveyed.ToneHertz)}  {surveyed.Millivolts,8:0.000} mV  {flags}").TrimEnd();
    }

    private static string Peak(OutputSwept swept)
    {
        var head = Text($"  output {swept.Output,3}  {Tone(swept.ToneHertz)}");
        return swept.PeakPicofarads is { } peak
            ? head + Text($"  peak {new Capacitance(peak).Nanofarads,9:0.00} nF ± {swept.PeakSdPicofarads / 1000:0.00}")
                + Text($"  half-width {swept.HalfWidthPicofarads / 1000,6:0.00} nF")
                + Text($"  {swept.PeakMillivolts,7:0.000} mV  {swept.Readings} readings")
            : head + "  no peak";
    }

    private static string Tone(double? hertz) => hertz is > 0 ? Text($"{hertz,9:0.00} Hz") : "     no tone";

    private static string Text(FormattableString text) => text.ToString(CultureInfo.InvariantCulture);

    private void Print(JournalEntry entry)
    {
        if (Line(entry.Event) is { } line)
            output.WriteLine(line);
    }

    private void Say(BenchStatus status)
    {
        if (status.Message is { } message && message != _said)
            output.WriteLine($"  >> {message}{(status.Activity == BenchActivity.Paused ? GapLines.Stop : "")}");
        _said = status.Message;
    }

    // A terminal has one bell: it rings as the meter beeps.
    private void Ring(BenchSound sound) => output.Write(sound switch { BenchSound.Recognised => "", BenchSound.Done => "\a", _ => "\a\a" });
}

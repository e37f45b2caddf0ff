using System.Globalization;
using AutoSweep.Core.Calibration;
using AutoSweep.Instruments.Fixture;

namespace AutoSweep.Worker.Calibration;

/// <summary>What a check of a calibration says, in plain words.</summary>
public static class CheckWords
{
    /// <summary>The verdict.</summary>
    /// <param name="points">The points.</param>
    public static string Of(IReadOnlyList<CheckedPoint> points)
    {
        var off = points.Where(point => !point.Holds).ToArray();
        if (off.Length == 0)
            return Text($"The calibration still holds: all {points.Count} sets measure what it says, within what the uncertainties allow.");
        return StrayMoved(points) is { } shift
            ? Text($"The stray has moved by {shift:+0.0;-0.0} pF, the relays have not. ")
                + "Lay the leads as they will lie and check again; if it stays, calibrate anew."
            : $"The calibration no longer holds at {off.Length} of {points.Count} sets "
                + $"({string.Join("; ", off.Select(Point))}). Calibrate anew.";
    }

    /// <summary>A set of relays as a technician reads it.</summary>
    public static string Set(uint closed) => closed == 0 ? "all open" : new RelaySet(closed).Named();

    // One difference at the open fixture explains all the others.
    private static double? StrayMoved(IReadOnlyList<CheckedPoint> points)
    {
        var open = points.FirstOrDefault(point => point.Closed == 0);
        return open is { Holds: false }
            && points.All(point => Math.Abs(point.DifferencePicofarads - open.DifferencePicofarads) <= point.LimitPicofarads)
            ? open.DifferencePicofarads
            : null;
    }

    private static string Point(CheckedPoint point) => Text($"{Set(point.Closed)}: {point.DifferencePicofarads:+0.0;-0.0} pF");

    private static string Text(FormattableString text) => text.ToString(CultureInfo.InvariantCulture);
}

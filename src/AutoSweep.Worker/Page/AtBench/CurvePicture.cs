using System.Globalization;
using System.Text;
using AutoSweep.Core.Peaks;
using AutoSweep.Core.Quantities;

namespace AutoSweep.Worker.Page.AtBench;

/// <summary>Where everything stands in the live picture of a sweep: readings, the fitted curve, the peak with its uncertainty, the axes.</summary>
/// <remarks>Made anew with each reading, so it is only arithmetic; places are in units of the picture, from its top left.</remarks>
public sealed class CurvePicture
{
    /// <summary>The picture's size.</summary>
    public const int Width = 640, Height = 330;

    // Room for the labels of the axes.
    private const double Left = 70, Right = 16, Top = 30, Bottom = 60;

    // Enough that a sharp peak has no corners at this size.
    private const int Samples = 96;

    private readonly double _from, _to, _most;

    private CurvePicture(IReadOnlyList<ShownReading> readings, PeakFit? fit)
    {
        Readings = [.. readings.Where(reading => reading.Picofarads is not null)];
        Fit = fit;
        var (low, high) = Span();
        (_from, _to) = (low, high);
        _most = 1.12 * Readings.Select(reading => reading.Millivolts).Append(fit is null ? 0 : fit.Curve.LevelAt(fit.Peak).Millivolts).Max();
    }

    /// <summary>The readings that have a place on the curve.</summary>
    public IReadOnlyList<ShownReading> Readings { get; }

    /// <summary>The fit; none before there is one.</summary>
    public PeakFit? Fit { get; }

    /// <summary>Round places of the capacitance in nanofarads.</summary>
    public IReadOnlyList<double> TicksNanofarads => AxisTicks.Between(_from / 1000, _to / 1000, 6);

    /// <summary>Round places of the level in millivolts.</summary>
    public IReadOnlyList<double> TicksMillivolts => AxisTicks.Between(0, _most, 4);

    /// <summary>The picture, or none while there is nothing on the curve.</summary>
    public static CurvePicture? Of(IReadOnlyList<ShownReading> readings, PeakFit? fit) =>
        readings.Any(reading => reading is { Picofarads: not null, Millivolts: > 0 }) ? new(readings, fit) : null;

    /// <summary>Where a capacitance stands.</summary>
    public double X(double picofarads) => Round(Left + ((Width - Left - Right) * (picofarads - _from) / (_to - _from)));

    /// <summary>Where a level stands.</summary>
    public double Y(double millivolts) => Round(Height - Bottom - ((Height - Top - Bottom) * millivolts / _most));

    /// <summary>The fitted curve as an SVG path; empty before there is a fit.</summary>
    public string Path()
    {
        if (Fit is null)
            return "";
        var path = new StringBuilder();
        for (var sample = 0; sample <= Samples; sample++)
        {
            var place = _from + ((_to - _from) * sample / Samples);
            var level = Fit.Curve.LevelAt(Capacitance.FromPicofarads(place)).Millivolts;
            path.Append(CultureInfo.InvariantCulture, $"{(sample == 0 ? 'M' : 'L')}{X(place)} {Y(level)}");
        }

        return path.ToString();
    }

    /// <summary>The band within one standard deviation of the peak: its left end and its width, at least wide enough to be seen.</summary>
    public (double X, double Width) Band
    {
        get
        {
            var (peak, sd) = (Fit!.Peak.Picofarads, Math.Min(Fit.PeakSdPicofarads, _to - _from));
            var (left, right) = (Math.Max(Left, X(peak - sd)), Math.Min(Width - Right, X(peak + sd)));
            return right - left >= 2 ? (left, Round(right - left)) : (X(peak) - 1, 2);
        }
    }

    // Two and a half half-widths to either side show peak and both flanks; readings farther off stay in the picture.
    private (double From, double To) Span()
    {
        var places = Readings.Select(reading => (double)reading.Picofarads!.Value).ToList();
        if (Fit is { } fit && double.IsFinite(fit.HalfWidthPicofarads))
            places.AddRange([fit.Peak.Picofarads - (2.5 * fit.HalfWidthPicofarads), fit.Peak.Picofarads + (2.5 * fit.HalfWidthPicofarads)]);
        var (low, high) = (places.Min(), places.Max());
        var margin = Math.Max(0.06 * (high - low), 0.02 * high);
        return (Math.Max(0, low - margin), high + margin);
    }

    private static double Round(double place) => Math.Round(place, 1);
}

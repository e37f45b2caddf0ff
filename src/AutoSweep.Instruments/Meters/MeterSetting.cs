using AutoSweep.Instruments.Scpi;

namespace AutoSweep.Instruments.Meters;

/// <summary>What fills a driver command's placeholders.</summary>
internal sealed record MeterSetting(double RangeVolts, string RangeArgument, DriverBandwidth Bandwidth, double ApertureSeconds)
{
    /// <summary>The setting for a level and a tone: the smallest range that holds the one, the fastest bandwidth that passes the
    /// other.</summary>
    public static MeterSetting For(MeterDriver driver, double largestVolts, double lowestHertz)
    {
        var level = driver.Level ?? throw driver.Lacks("level", "reads no level");
        var (ranges, bandwidths) = (level.RangesVolts, level.Bandwidths);
        var range = ranges.FirstOrDefault(range => range * level.OverRange >= largestVolts, ranges[^1]);
        return new(
            range,
            level.RangeArguments.ElementAtOrDefault(ranges.Index().First(one => one.Item == range).Index) ?? ScpiNumber.Format(range),
            bandwidths.LastOrDefault(bandwidth => bandwidth.FromToneHertz <= lowestHertz, bandwidths[0]),
            driver.Frequency?.ApertureSeconds ?? 0);
    }

    /// <summary>A command with its placeholders filled in.</summary>
    public string Fill(string command) => command
        .Replace("{range}", RangeArgument, StringComparison.Ordinal)
        .Replace("{bandwidth}", Bandwidth.Argument ?? ScpiNumber.Format(Bandwidth.Hertz), StringComparison.Ordinal)
        .Replace("{aperture}", ScpiNumber.Format(ApertureSeconds), StringComparison.Ordinal);
}

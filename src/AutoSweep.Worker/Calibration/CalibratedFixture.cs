using AutoSweep.Core;
using AutoSweep.Core.Calibration;
using AutoSweep.Instruments.Fixture;

namespace AutoSweep.Worker.Calibration;

/// <summary>Makes the calibration file's record of a solution, or says why there is none.</summary>
public static class CalibratedFixture
{
    // A thousandth of a picofarad is beyond every capacitance meter on a bench.
    private const int Decimals = 3;

    /// <summary>What stops a calibration from being used: everything but a value that is only unusual.</summary>
    public static IEnumerable<RelayFinding> Faults(CalibrationSolution solution) =>
        solution.Findings.Where(finding => finding.Kind != RelayFindingKind.UnlikelyValue);

    /// <summary>The record of a sound fixture.</summary>
    /// <param name="solution">The solution.</param>
    /// <param name="serial">The fixture's serial number.</param>
    /// <param name="meter">The meter, in words.</param>
    /// <param name="temperatureCelsius">The temperature in the box, if it is known.</param>
    /// <param name="date">The day.</param>
    /// <exception cref="BenchFaultException">The fixture is faulty, the meter does not see it, or the stray is below 0.</exception>
    public static FixtureCalibration Of(
        CalibrationSolution solution, string serial, string meter, double? temperatureCelsius, DateOnly date)
    {
        Check(solution);
        return new()
        {
            FixtureSerial = serial,
            StrayPicofarads = Rounded(Math.Max(0, solution.Stray.Picofarads)),
            RelaysPicofarads = [.. solution.Relays.Select(relay => Rounded(relay.Picofarads))],
            Date = date,
            Meter = meter,
            TemperatureCelsius = temperatureCelsius is >= -20 and <= 70 ? temperatureCelsius : null,
            StrayStandardUncertaintyPicofarads = RoundedUp(solution.Stray.StandardUncertainty),
            RelayStandardUncertaintiesPicofarads = [.. solution.Relays.Select(relay => RoundedUp(relay.StandardUncertainty))],
        };
    }

    private static void Check(CalibrationSolution solution)
    {
        var faults = Faults(solution).ToArray();
        if (faults.Count(fault => fault.Kind is RelayFindingKind.StuckOpen or RelayFindingKind.DoesNotSwitch) > solution.Relays.Count / 2)
            throw new BenchFaultException(
                BenchFault.NoAnswer,
                FormattableString.Invariant(
                    $"closing relays changes nothing: {faults.Length} of {solution.Relays.Count} add no capacitance"),
                "a capacitance meter that measures the fixture", "put the meter's leads on the fixture's clips, and start anew");
        if (faults.Length > 0)
            throw new BenchFaultException(
                BenchFault.FixtureFault, string.Join("; ", faults.Select(FindingText.Of)), "a sound relay and capacitor in every place",
                "mend or replace what is named, then calibrate anew; no calibration file was written");
        if (solution.Stray.Picofarads < -solution.Stray.ExpandedUncertainty)
            throw new BenchFaultException(
                BenchFault.FixtureFault,
                FormattableString.Invariant($"the open fixture measures {solution.Stray.Picofarads:0.00} pF"),
                "0 pF or more",
                "do the meter's open correction with its leads off the fixture's clips, then calibrate anew");
    }

    private static double Rounded(double picofarads) => Math.Round(picofarads, Decimals);

    private static double RoundedUp(double picofarads) => Math.Round(picofarads + (0.5 * Math.Pow(10, -Decimals)), Decimals);
}

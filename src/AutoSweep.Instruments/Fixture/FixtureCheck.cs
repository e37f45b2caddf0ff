using System.Globalization;
using AutoSweep.Core;
using AutoSweep.Instruments.Scpi;

namespace AutoSweep.Instruments.Fixture;

/// <summary>What must hold before a fixture is used.</summary>
internal static class FixtureCheck
{
    /// <summary>Checks serial number and number of relays against the calibration.</summary>
    public static async Task CalibrationIsOfAsync(
        ScpiSession session, InstrumentIdentity identity, FixtureCalibration calibration, CancellationToken cancellationToken)
    {
        if (identity.Serial != calibration.FixtureSerial)
            throw OtherFixture(session, identity, calibration);
        var relays = await session.QueryAsync("SYST:REL?", cancellationToken);
        if (ScpiNumber.Parse(relays.Trim()) is not { } count || !count.Equals(calibration.RelaysPicofarads.Count))
            throw OtherCount(session, relays, calibration);
    }

    /// <summary>Lets the fixture test its coil drivers.</summary>
    public static async Task PassesSelfTestAsync(ScpiSession session, CancellationToken cancellationToken)
    {
        var result = await session.QueryAsync("*TST?", cancellationToken);
        if (ScpiNumber.Parse(result.Trim()) is not 0)
            throw new BenchFaultException(
                BenchFault.FixtureFault,
                $"the fixture at {session.Resource} fails its self-test with the code {result}",
                "the code 0",
                "Switch the fixture off and on. If it stays, look the code up in the fixture's papers: a coil or its driver is broken.");
    }

    private static BenchFaultException OtherFixture(ScpiSession session, InstrumentIdentity identity, FixtureCalibration calibration) =>
        new(
        BenchFault.WrongCalibration,
        $"the fixture at {session.Resource} has the serial number {identity.Serial}",
        $"the serial number {calibration.FixtureSerial}, whose relays the calibration file lists",
        $"Give the calibration file of fixture {identity.Serial}, or connect fixture {calibration.FixtureSerial}.");

    private static BenchFaultException OtherCount(ScpiSession session, string relays, FixtureCalibration calibration) => new(
        BenchFault.WrongCalibration,
        $"the fixture at {session.Resource} has {relays} relays",
        string.Create(CultureInfo.InvariantCulture, $"{calibration.RelaysPicofarads.Count} relays, as the calibration file lists"),
        "Give the calibration file of this fixture, with one number a relay.");
}

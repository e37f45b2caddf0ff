using System.Globalization;
using AutoSweep.Core;
using AutoSweep.Instruments.Scpi;

namespace AutoSweep.Instruments.Fixture;

/// <summary>What must hold before a fixture is used.</summary>
internal static class FixtureCheck
{
    /// <summary>How many relays the fixture has; serial number and number are checked against a calibration where there is one.</summary>
    public static async Task<int> RelaysAsync(
        ScpiSession session, InstrumentIdentity identity, FixtureCalibration? calibration, CancellationToken cancellationToken)
    {
        if (calibration is not null && identity.Serial != calibration.FixtureSerial)
            throw OtherFixture(session, identity, calibration);
        var relays = await session.QueryAsync("SYST:REL?", cancellationToken);
        var count = ScpiNumber.Parse(relays.Trim());
        if (calibration is not null && !calibration.RelaysPicofarads.Count.Equals((int?)count))
            throw OtherCount(session, relays, calibration);
        return count is >= 1 and <= FixtureCalibration.MostRelays ? (int)count : throw NoCount(session, relays);
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

    private static BenchFaultException NoCount(ScpiSession session, string relays) => new(
        BenchFault.NoAnswer,
        $"the fixture at {session.Resource} says that it has \"{relays}\" relays",
        $"a number from 1 to {FixtureCalibration.MostRelays}",
        "Check that its firmware keeps to docs/fixture-protocol.md.");
}

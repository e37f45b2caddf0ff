using System.Numerics;
using AutoSweep.Sim.Benches;

namespace AutoSweep.Sim.Fixture;

/// <summary>The relays and their capacitors: what the coils are told, and what the contacts do a few milliseconds later.</summary>
/// <remarks>Break before make: whatever opens has opened before anything closes. A bouncing contact counts as open.</remarks>
internal sealed class RelayBank(FixtureDefinition fixture)
{
    /// <summary>The loss tangent of a leaking capacitor (invented; a hundred times that of polypropylene).</summary>
    private const double LeakTangent = 0.05;

    private readonly Queue<(TimeSpan At, uint Contacts)> changes = new();
    private readonly long[] cycles = new long[fixture.Relays.Count];
    private uint contacts;
    private TimeSpan watchdog;
    private TimeSpan lastMessage;
    private bool expiredSinceMessage;

    public int Count => fixture.Relays.Count;

    /// <summary>Which coils are driven, bit 0 for relay 1.</summary>
    public uint Coils { get; private set; }

    /// <summary>When the last change has finished bouncing.</summary>
    public TimeSpan SettledAt { get; private set; }

    /// <summary>How often the watchdog has opened the relays; the fixture queues an error for each.</summary>
    public int Expiries { get; private set; }

    public IReadOnlyList<long> Cycles => cycles;

    /// <summary>The capacitance between the clips now.</summary>
    public double Farads => 1e-12 * (fixture.StrayPicofarads + Members(Connected).Sum(relay => fixture.Relays[relay].Picofarads));

    // The contacts that really touch: a stuck one does as it likes.
    private uint Connected => (contacts & ~With(RelayFault.StuckOpen)) | With(RelayFault.StuckClosed);

    /// <summary>The admittance between the clips now, losses included.</summary>
    public Complex Admittance(double omega)
    {
        var leaking = Members(Connected & With(RelayFault.Leaking)).Sum(relay => fixture.Relays[relay].Picofarads);
        return omega * new Complex((Farads * fixture.LossTangent) + (leaking * 1e-12 * LeakTangent), Farads);
    }

    public TimeSpan Watchdog
    {
        get => watchdog;
        set => watchdog = value;
    }

    /// <summary>A message has come: the watchdog starts anew.</summary>
    public void Feed(TimeSpan now) => (lastMessage, expiredSinceMessage) = (now, false);

    /// <summary>Drives exactly these coils.</summary>
    public void Drive(uint coils, TimeSpan now)
    {
        var opening = Coils & ~coils;
        var closing = coils & ~Coils;
        if ((opening | closing) == 0) return;
        foreach (var relay in Members(opening | closing)) cycles[relay]++;
        var start = now > SettledAt ? now : SettledAt;
        if (opening != 0) Schedule(start += TimeSpan.FromMilliseconds(fixture.ReleaseMilliseconds), Coils & ~opening);
        if (closing != 0) Schedule(start += TimeSpan.FromMilliseconds(fixture.BounceMilliseconds), coils);
        Coils = coils;
    }

    /// <summary>When the contacts next change, at the latest at a time; none if they do not.</summary>
    public TimeSpan? NextChange(TimeSpan until)
    {
        var expiry = watchdog > TimeSpan.Zero && !expiredSinceMessage ? lastMessage + watchdog : TimeSpan.MaxValue;
        var next = changes.TryPeek(out var change) && change.At <= expiry ? change.At : expiry;
        return next <= until ? next : null;
    }

    /// <summary>Lets the change at a time happen.</summary>
    public void Take(TimeSpan time)
    {
        if (changes.TryPeek(out var change) && change.At == time)
        {
            contacts = changes.Dequeue().Contacts;
            return;
        }

        expiredSinceMessage = true;
        Expiries++;
        Drive(0, time);
    }

    private void Schedule(TimeSpan time, uint to)
    {
        changes.Enqueue((time, to));
        SettledAt = time;
    }

    private uint With(RelayFault fault) => fixture.Relays.Index()
        .Where(relay => relay.Item.Fault == fault).Aggregate(0u, (set, relay) => set | 1u << relay.Index);

    private static IEnumerable<int> Members(uint set) => Enumerable.Range(0, 32).Where(relay => (set >> relay & 1) != 0);
}

using AutoSweep.Sources.Networks;

namespace AutoSweep.Sources;

/// <summary>Random sources by seed: half series, a third shunt, a sixth coupled or tapped; Q 4 to 25, true peak 40 to 300 nF.</summary>
public static class SourceLibrary
{
    /// <summary>The first sources of a seed; more asked for never changes the earlier ones.</summary>
    public static IReadOnlyList<RandomSource> Take(int count, int seed) =>
        [.. Enumerable.Range(0, count).AsParallel().AsOrdered().Select(i => One(i, seed))];

    /// <summary>Groups of outputs that share coil family and law: Q within 15 %, expected values off by one common factor and up to 7 % each.</summary>
    public static IReadOnlyList<IReadOnlyList<RandomSource>> Groups(int groups, int outputs, int seed) =>
        [.. Enumerable.Range(0, groups).AsParallel().AsOrdered().Select(i => Group(i, outputs, seed))];

    private static RandomSource One(int index, int seed)
    {
        var random = new Random(unchecked(seed * 1_000_003 + index));
        var source = Draw(Family(index), random, lowestQ: 4, highestQ: 25);
        return source with { ExpectedPicofarads = source.Peak.Picofarads * (1 + Between(random, -0.4, 0.4)) };
    }

    private static RandomSource[] Group(int index, int outputs, int seed)
    {
        var random = new Random(unchecked(seed * 1_000_003 + index));
        var (bias, q) = (1 + Between(random, -0.4, 0.4), Between(random, 5, 20));
        return [.. Enumerable.Range(0, outputs).Select(_ => Draw(Family(index), random, q * 0.85, q * 1.15)).Select(source =>
            source with { ExpectedPicofarads = source.Peak.Picofarads * bias * (1 + Between(random, -0.07, 0.07)) })];
    }

    private static SourceFamily Family(int index) => (index % 12) switch
    {
        < 6 => SourceFamily.Series,
        < 10 => SourceFamily.Shunt,
        10 => SourceFamily.Coupled,
        _ => SourceFamily.Tapped,
    };

    private static RandomSource Draw(SourceFamily family, Random random, double lowestQ, double highestQ)
    {
        while (true)
        {
            var network = Network(family, random);
            var peak = TruePeak.Of(network);
            if (peak is { Picofarads: >= 40_000 and <= 300_000 } && peak.Q >= lowestQ && peak.Q <= highestQ)
                return new(
                    family,
                    network,
                    peak,
                    peak.Picofarads,
                    Between(random, 0.002, 0.01),
                    Between(random, 0, 0.05),
                    Between(random, -0.01, 0.01),
                    Between(random, 1.5, 2),
                    random.Next());
        }
    }

    // Parts for a wished peak and Q; loads and couplings then move both, and One keeps what is still in range.
    private static INetwork Network(SourceFamily family, Random random)
    {
        var omega = 2 * Math.PI * Between(random, 500, 6000);
        var farads = Between(random, 40e-9, 300e-9);
        var q = Between(random, 4, 28);
        var henries = 1 / (omega * omega * farads);
        var ohms = omega * henries / q;
        var load = omega * henries * q * Between(random, 5, 100);
        var loss = Between(random, 0.0005, 0.008);
        return family switch
        {
            SourceFamily.Series => Series(random, omega, henries, ohms, load, loss),
            SourceFamily.Shunt => new ShuntNetwork(omega, ohms, henries, load, loss),
            SourceFamily.Coupled => Coupled(random, omega, henries, ohms, loss),
            _ => Tapped(random, omega, henries, ohms, load, loss),
        };
    }

    private static SeriesNetwork Series(Random random, double omega, double henries, double ohms, double load, double loss)
    {
        var (pickupOhms, pickupHenries) = (Between(random, 0.1, 0.6), Between(random, 0.03, 0.3));
        return new(omega, ohms * pickupOhms, henries * pickupHenries, ohms * (1 - pickupOhms), henries * (1 - pickupHenries), load, loss);
    }

    // Stray emf of up to 5 % of what the resonance gives at the secondary.
    private static CoupledNetwork Coupled(Random random, double omega, double henries, double ohms, double loss)
    {
        var (pickupOhms, pickupHenries) = (Between(random, 0.1, 0.5), Between(random, 0.03, 0.2));
        var turns = Between(random, 0.1, 1);
        var coupling = Between(random, 0.7, 0.97);
        var primary = henries * (1 - pickupHenries);
        var secondary = turns * turns * primary;
        var stray = Between(random, -0.05, 0.05) * turns * coupling * omega * primary / ohms;
        return new(omega, ohms * pickupOhms, henries * pickupHenries, ohms * (1 - pickupOhms), primary,
            ohms * turns * turns, secondary, coupling, omega * secondary * Between(random, 5, 100), stray, loss);
    }

    private static TappedNetwork Tapped(Random random, double omega, double henries, double ohms, double load, double loss)
    {
        var tap = Between(random, 0.1, 0.45);
        return new(omega, ohms * (1 - tap), henries * (1 - tap), ohms * tap, henries * tap, load, loss);
    }

    private static double Between(Random random, double low, double high) => low + (high - low) * random.NextDouble();
}

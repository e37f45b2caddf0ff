using System.ComponentModel;
using System.ComponentModel.DataAnnotations;
using System.Text.Json.Serialization;
using AutoSweep.Core.Quantities;

namespace AutoSweep.Core.Decades;

/// <summary>A decade capacitance box that is dialled by hand: what it can be set to, and how well that is known.</summary>
/// <remarks>
/// A box of 1 % says where its dials stand, not what is in circuit. What two settings with the same large dials have in common is
/// off by the same amount, so their difference is known far better than either; that is why settings are compared dial by dial.
/// </remarks>
public sealed record DecadeBox
{
    // A limit of error without more said of it is taken as rectangular: limit / √3 (JCGM 100:2008, GUM, 4.3.7).
    private static readonly double Rectangular = Math.Sqrt(3);

    /// <summary>What the box is called, or its serial number.</summary>
    [Description("What the box is called, or its serial number.")]
    public string Name { get; init; } = "decade box";

    /// <summary>The dials, the largest first.</summary>
    [Description("The dials, the largest first.")]
    public required IReadOnlyList<Decade> Decades { get; init; }

    /// <summary>What box and leads have with every dial at 0, in picofarads.</summary>
    /// <value>Default 50: two-terminal boxes of the economy class have 15 to 50 pF (from memory), leads some more.</value>
    [Description("What box and leads have with every dial at 0, in picofarads; 50 when left out."), Range(0, 10_000)]
    public double StrayPicofarads { get; init; } = 50;

    /// <summary>The maker's limit of error in per cent of what is dialled; where it is measured it counts no more.</summary>
    /// <value>Default 1: boxes of the economy class state 1 to 5 % (from memory).</value>
    [Description("The maker's limit of error in per cent of the value; 1 when left out."), Range(0.001, 20)]
    public double TolerancePercent { get; init; } = 1;

    /// <summary>How far measured positions may be off against each other, in per cent: the capacitance meter's, its gain left out.</summary>
    /// <value>Default 0.1: the last digits of a handheld meter of four digits (from memory). What it is off in everything, the parts share.</value>
    [Description("How far measured positions may be off against each other, in per cent; 0.1 when left out."), Range(0.001, 20)]
    public double MeasuredPercent { get; init; } = 0.1;

    /// <summary>Whether every dial was measured.</summary>
    [JsonIgnore]
    public bool IsMeasured => Decades.All(decade => decade.MeasuredPicofarads is not null);

    /// <summary>The total with every dial at 0.</summary>
    [JsonIgnore]
    public Capacitance Smallest => Capacitance.FromPicofarads(StrayPicofarads);

    /// <summary>Every dial at 0.</summary>
    [JsonIgnore]
    public DialSetting AtZero => new(new int[Decades.Count]);

    /// <summary>The total of a setting, stray included.</summary>
    public Capacitance Total(DialSetting setting) => Capacitance.FromPicofarads(Sum(setting));

    /// <summary>The total with every dial at its highest position.</summary>
    [JsonIgnore]
    public Capacitance Largest => Total(new([.. Decades.Select(decade => decade.Steps)]));

    /// <summary>The setting nearest to a wanted total; of equals the one with fewest dials to turn.</summary>
    /// <param name="wantedPicofarads">The wanted total, stray included.</param>
    /// <param name="from">Where the dials stand.</param>
    public DialSetting Nearest(double wantedPicofarads, DialSetting? from = null) => Nearest(wantedPicofarads, from, Decades.Count);

    /// <summary>Settings near a wanted total, coarse to fine: only the largest dial turned, the two largest, … all of them.</summary>
    /// <param name="wantedPicofarads">The wanted total.</param>
    /// <param name="from">Where the dials stand; those not turned stay there.</param>
    internal IEnumerable<DialSetting> Around(double wantedPicofarads, DialSetting? from)
    {
        for (var turned = 1; turned <= Decades.Count; turned++)
        {
            yield return Nearest(wantedPicofarads, from, turned);
            if (turned < Decades.Count && from is not null)
                yield return Nearest(wantedPicofarads, AtZero, turned);
        }
    }

    /// <summary>How well a setting's total is known: one standard deviation in picofarads.</summary>
    public double Sd(DialSetting setting) => DifferenceSd(setting, AtZero);

    /// <summary>How well the difference of two settings is known: what dials at the same position are off by cancels.</summary>
    /// <returns>One standard deviation in picofarads.</returns>
    public double DifferenceSd(DialSetting one, DialSetting other)
    {
        var sum = 0.0;
        for (var dial = 0; dial < Decades.Count; dial++)
        {
            var (a, b) = (one.Positions[dial], other.Positions[dial]);
            if (a != b)
                sum += Square(dial, a) + Square(dial, b);
        }

        return Math.Sqrt(sum);
    }

    private double Square(int dial, int position)
    {
        var decade = Decades[dial];
        var percent = decade.MeasuredPicofarads is null ? TolerancePercent : MeasuredPercent;
        var sd = decade.Picofarads(position) * percent / 100 / Rectangular;
        return sd * sd;
    }

    private double Sum(DialSetting setting) =>
        StrayPicofarads + setting.Positions.Select((position, dial) => Decades[dial].Picofarads(position)).Sum();

    // The dials from `turned` on stay where they are.
    private DialSetting Nearest(double wanted, DialSetting? from, int turned)
    {
        var positions = from?.Positions.ToArray() ?? new int[Decades.Count];
        var rest = wanted - StrayPicofarads;
        for (var dial = turned; dial < Decades.Count; dial++)
            rest -= Decades[dial].Picofarads(positions[dial]);
        var best = (Away: double.PositiveInfinity, Turns: int.MaxValue, Setting: new DialSetting([.. positions]));
        Try(0, rest);
        return best.Setting;

        void Try(int dial, double left)
        {
            if (dial == turned)
            {
                var (away, setting) = (Math.Abs(left), new DialSetting([.. positions]));
                var turns = setting.TurnsFrom(from);
                if (away < best.Away - 0.5 || (away < best.Away + 0.5 && turns < best.Turns))
                    best = (away, turns, setting);
                return;
            }

            var step = Decades[dial].StepPicofarads;
            var whole = (int)Math.Clamp(Math.Floor(left / step), 0, Decades[dial].Steps);
            // One to either side: measured steps are a little off, and of a dial with a position 10 two settings may be alike.
            // The larger first, so that of equals 1-0 is taken and not 0-10.
            for (var position = Math.Min(Decades[dial].Steps, whole + 1); position >= Math.Max(0, whole - 1); position--)
            {
                positions[dial] = position;
                Try(dial + 1, left - Decades[dial].Picofarads(position));
            }
        }
    }
}

using AutoSweep.Core.Quantities;
using AutoSweep.Instruments.Fixture;

namespace AutoSweep.Worker.Tests.Support;

/// <summary>A fixture that sets whole hundreds of picofarads, and remembers what it was told.</summary>
internal sealed class FakeFixture : ICapacitanceFixture
{
    public List<Capacitance> Sets { get; } = [];

    /// <summary>What is in circuit now; the stray alone when every relay is open.</summary>
    public Capacitance Present { get; private set; }

    /// <summary>Whether the relays have fallen open by themselves, each time that this is asked; they have not when nothing is left.</summary>
    public Queue<bool> Falls { get; } = new();

    public bool IsOpen => Present == Smallest;

    public bool IsDisposed { get; private set; }

    public string Serial => "F-0007";

    public Capacitance Smallest => new(150);

    public Capacitance Largest => new(999_900 + 150);

    public Task<Capacitance> SetAsync(Capacitance wanted, CancellationToken cancellationToken)
    {
        Assert.InRange(wanted.Picofarads, Smallest.Picofarads, Largest.Picofarads);
        Present = new((wanted.Picofarads / 100 * 100) + 50);
        Sets.Add(Present);
        return Task.FromResult(Present);
    }

    public Task<bool> StandsAsync(CancellationToken cancellationToken)
    {
        if (Falls.TryDequeue(out var hasFallen) && hasFallen)
            Present = Smallest;
        return Task.FromResult(!hasFallen);
    }

    public Task OpenAllAsync(CancellationToken cancellationToken)
    {
        Present = Smallest;
        return Task.CompletedTask;
    }

    public ValueTask DisposeAsync()
    {
        (Present, IsDisposed) = (Smallest, true);
        return ValueTask.CompletedTask;
    }
}

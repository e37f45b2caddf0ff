using AutoSweep.Core.Magnets;
using AutoSweep.Worker.Bench;
using AutoSweep.Worker.Levelling;

namespace AutoSweep.Worker.Tests.Support;

/// <summary>A hand that does exactly what the screen says, or what the test says instead; the level follows by so many decibels a millimetre.</summary>
internal sealed class FakeMoves(BenchScene scene, double decibelsPerMillimetre) : IMoveSource
{
    public double Millivolts { get; set; }

    public Queue<MoveOutcome> Instead { get; } = [];

    /// <summary>The meter, as a link reports it that has broken.</summary>
    public static AutoSweep.Core.BenchFaultException Gone => new(AutoSweep.Core.BenchFault.NotReachable, "the link broke", "a link", "look at its cable") { LostResource = "M" };

    /// <summary>At which order the meter is lost while the hand moves, counting from 1; never when 0.</summary>
    public int Lost { get; set; }

    public List<MagnetMove> Orders { get; } = [];

    public Task<MoveOutcome> WaitAsync(LevelSample before, Action<LevelSample> live, CancellationToken cancellationToken)
    {
        var order = scene.Board.Status.Levelling!.Order!;
        Orders.Add(order);
        if (Orders.Count == Lost)
            throw Gone;
        if (Instead.TryDequeue(out var outcome))
            return Task.FromResult(outcome);
        Millivolts *= Math.Pow(10, -decibelsPerMillimetre * order.OutwardMillimetres / 20);
        return Task.FromResult<MoveOutcome>(new MoveOutcome.Moved(before with { Mean = new(Millivolts / 1000) }));
    }
}

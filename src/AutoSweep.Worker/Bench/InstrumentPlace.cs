namespace AutoSweep.Worker.Bench;

/// <summary>Where an instrument is, and how it is known again.</summary>
/// <typeparam name="TInstrument">Its kind.</typeparam>
/// <param name="Name">Its name in the middle of a sentence.</param>
/// <param name="Resource">Its resource name.</param>
/// <param name="Identity">Which one it is: the same before and after a gap.</param>
/// <param name="Open">Opens it.</param>
/// <param name="GoesOn">What the person is told when it is back: what begins anew, in a sentence.</param>
public sealed record InstrumentPlace<TInstrument>(
    string Name, string Resource, Func<TInstrument, string> Identity, Func<CancellationToken, Task<TInstrument>> Open, string GoesOn);

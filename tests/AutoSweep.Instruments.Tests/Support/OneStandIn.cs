namespace AutoSweep.Instruments.Tests.Support;

/// <summary>The stand-in library is one for the whole process.</summary>
[CollectionDefinition(VisaStandIn.Collection)]
public sealed class OneStandIn;

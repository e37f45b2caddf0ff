using AutoSweep.Core.Generator;

namespace AutoSweep.Core.Journal;

/// <summary>The job began. The profile is kept whole, so that the record needs no other file to be read in ten years.</summary>
/// <param name="Software">Name and version of the program that opened the job.</param>
/// <param name="Profile">The generator on the bench.</param>
public sealed record JobOpened(string Software, GeneratorProfile Profile) : JournalEvent;

using System.Globalization;
using System.Security.Cryptography;
using System.Text;

namespace PlantWatch.Server.PlantFile.Editing;

/// <summary>Where the plant file is read and written for the page. It is replaced whole, never written into, and what lay there before is kept.</summary>
internal sealed class PlantFileDesk(PlantWatchOptions options, PlantFileWatcher watcher, TimeProvider clock, ILogger<PlantFileDesk> log) : IDisposable
{
    /// <summary>The digest of a file that is not there.</summary>
    public const string NoFile = "none";

    private const int MostKept = 200;
    private static readonly TimeSpan Patience = TimeSpan.FromSeconds(8);
    private static readonly UTF8Encoding Strict = new(encoderShouldEmitUTF8Identifier: false, throwOnInvalidBytes: true);
    private readonly SemaphoreSlim _writing = new(1, 1);

    /// <summary>Where former versions lie.</summary>
    public string Kept => Path.Combine(options.Data, "plant-files");

    private string Named => Path.GetFullPath(options.PlantFile);

    /// <summary>The file as it lies there now.</summary>
    public PlantFileCopy Read()
    {
        try
        {
            var bytes = File.Exists(Named) ? PlantFileSource.Bytes(Named) : null;
            return bytes is null ? new("", NoFile, Mark: false, Fault: null)
                : new(TextOf(bytes), DigestOf(bytes), bytes.AsSpan().StartsWith(Encoding.UTF8.Preamble), bytes.Length > PlantFileReader.LargestBytes ? DeskFault.TooLarge : null);
        }
        catch (DecoderFallbackException)
        {
            return new("", "", false, DeskFault.NotText);
        }
        catch (Exception error) when (error is IOException or UnauthorizedAccessException)
        {
            return new("", "", false, DeskFault.NotReadable);
        }
    }

    /// <summary>What a text would be as the plant file, with the limit packs that lie beside it.</summary>
    public PlantFileSource Imagine(string text) => PlantFileSource.Of(Encoding.UTF8.GetBytes(text), Named);

    /// <summary>Whether the file can be replaced by this process.</summary>
    public bool IsWritable()
    {
        try
        {
            if (File.Exists(Target) && File.GetAttributes(Target).HasFlag(FileAttributes.ReadOnly)) return false;
            var probe = Fresh();
            using (File.Create(probe, 1, FileOptions.DeleteOnClose)) return true;
        }
        catch (Exception error) when (error is IOException or UnauthorizedAccessException)
        {
            return false;
        }
    }

    /// <summary>Replaces the file and waits until it is in force.</summary>
    /// <param name="text">The new text, which has been found good.</param>
    /// <param name="over">Digest of what it takes the place of.</param>
    /// <param name="signed">Who does it and why; it goes into the record.</param>
    public async Task<DeskFault?> SaveAsync(string text, string over, PlanSigned signed, CancellationToken cancellation)
    {
        await _writing.WaitAsync(cancellation);
        try
        {
            var before = Read();
            if (before.Fault is { } broken) return broken;
            if (before.Digest != over) return DeskFault.ChangedMeanwhile;
            if (before.Text == text && before.Digest != NoFile) return null;
            if (!IsWritable()) return DeskFault.NotWritable;
            var bytes = before.Mark ? [.. Encoding.UTF8.Preamble, .. Strict.GetBytes(text)] : Strict.GetBytes(text);
            return await ReplaceAsync(bytes, before, signed, cancellation);
        }
        finally
        {
            _writing.Release();
        }
    }

    public void Dispose() => _writing.Dispose();

    private async Task<DeskFault?> ReplaceAsync(byte[] bytes, PlantFileCopy before, PlanSigned signed, CancellationToken cancellation)
    {
        var fresh = Fresh();
        try
        {
            await WriteAsync(fresh, bytes, cancellation);
            Keep(before);
            // Another editor may have been at it while this was written.
            if (Read().Digest != before.Digest) return DeskFault.ChangedMeanwhile;
            var hash = PlantFileSource.Of(bytes, Named).Hash!;
            watcher.Expect(hash, signed);
            File.Move(fresh, Target, overwrite: true);
            PlantFileLog.Saved(log, Named, signed.By);
            await watcher.TakenAsync(hash, Patience, cancellation);
            return null;
        }
        catch (Exception error) when (error is IOException or UnauthorizedAccessException)
        {
            PlantFileLog.NotSaved(log, error, Named);
            return DeskFault.NotWritable;
        }
        finally
        {
            File.Delete(fresh);
        }
    }

    private async Task WriteAsync(string path, byte[] bytes, CancellationToken cancellation)
    {
        await using var file = new FileStream(path, FileMode.CreateNew, FileAccess.Write, FileShare.None);
        await file.WriteAsync(bytes, cancellation);
        file.Flush(flushToDisk: true);
        if (!OperatingSystem.IsWindows() && File.Exists(Target)) File.SetUnixFileMode(file.SafeFileHandle, File.GetUnixFileMode(Target));
    }

    private void Keep(PlantFileCopy before)
    {
        if (before.Digest == NoFile) return;
        Directory.CreateDirectory(Kept);
        File.Copy(Target, Path.Combine(Kept, $"plant.{clock.GetUtcNow().ToString("yyyyMMdd'T'HHmmss.fff'Z'", CultureInfo.InvariantCulture)}.yaml"), overwrite: true);
        foreach (var old in Directory.EnumerateFiles(Kept, "plant.*.yaml").OrderDescending(StringComparer.Ordinal).Skip(MostKept).ToArray()) File.Delete(old);
    }

    // A link stays a link: what it points at is replaced.
    private string Target => File.Exists(Named) ? File.ResolveLinkTarget(Named, returnFinalTarget: true)?.FullName ?? Named : Named;

    // In the same folder, since only there a rename is one step; the first dot keeps it out of listings.
    private string Fresh() => Path.Combine(Path.GetDirectoryName(Target)!, $".plant-{Guid.NewGuid():N}.new");

    private static string TextOf(byte[] bytes) => Strict.GetString(bytes.AsSpan().StartsWith(Encoding.UTF8.Preamble) ? bytes.AsSpan(Encoding.UTF8.Preamble.Length) : bytes);

    private static string DigestOf(byte[] bytes) => Convert.ToHexStringLower(SHA256.HashData(bytes));
}

/// <summary>A plant file as it was read for the page.</summary>
/// <param name="Text">Its text, without the mark of UTF-8.</param>
/// <param name="Digest">SHA-256 of its bytes, lower-case hexadecimal; <see cref="PlantFileDesk.NoFile"/> where there is none.</param>
/// <param name="Mark">It begins with the mark of UTF-8, and keeps it.</param>
/// <param name="Fault">Why it cannot be edited here; null when it can.</param>
internal sealed record PlantFileCopy(string Text, string Digest, bool Mark, DeskFault? Fault);

/// <summary>Who saved the plant file, and why.</summary>
internal sealed record PlanSigned(string By, string? Why);

/// <summary>Why a plant file was not read or not saved.</summary>
internal enum DeskFault
{
    /// <summary>Not stated.</summary>
    Unknown = 0,
    /// <summary>Somebody saved another version since it was read.</summary>
    ChangedMeanwhile,
    /// <summary>The file or its folder is read-only, or the disk is full.</summary>
    NotWritable,
    /// <summary>The file is there, and cannot be read.</summary>
    NotReadable,
    /// <summary>It is no text in UTF-8.</summary>
    NotText,
    /// <summary>It is larger than a plant file may be.</summary>
    TooLarge,
}

using System.Globalization;
using System.Reflection;

namespace PlantWatch.Storage.Sqlite;

/// <summary>Brings a database to the form this program knows, by numbered scripts, each in its own transaction.</summary>
internal static class Migrations
{
    /// <summary>Marks a SQLite file as PlantWatch's: "PWtc".</summary>
    private const long ApplicationId = 0x50577463;

    /// <summary>A bug before this version could damage a WAL database: sqlite.org, release log of 3.51.3.</summary>
    private static readonly Version OldestEngine = new(3, 51, 3);

    private static readonly SortedDictionary<int, string> Scripts = Find();

    /// <summary>Version of the newest script.</summary>
    public static int Newest => Scripts.Keys.Last();

    /// <summary>Looks at an existing file without changing it.</summary>
    /// <exception cref="UnusableDatabaseException">The file belongs to another program or to a newer PlantWatch.</exception>
    public static void RefuseUnusable(string path)
    {
        if (!File.Exists(path)) return;
        using var session = Session.OpenReader(path);
        RefuseNewer(session, path);
    }

    /// <summary>Looks at a file that may be older than this program.</summary>
    /// <exception cref="UnusableDatabaseException">The file belongs to another program or to a newer PlantWatch.</exception>
    public static void RefuseNewer(Session session, string path)
    {
        RefuseForeignFile(session, path);
        var version = VersionOf(session);
        if (version > Newest)
            throw new UnusableDatabaseException(
                $"{path} has version {version}, this program knows versions up to {Newest}: start the newer PlantWatch that wrote it");
    }

    /// <summary>Looks at a file that is only to be read, and so cannot be brought to another form.</summary>
    /// <exception cref="UnusableDatabaseException">The file belongs to another program or to another version of PlantWatch.</exception>
    public static void RefuseOtherForm(Session session, string path)
    {
        RefuseForeignFile(session, path);
        var version = VersionOf(session);
        if (version != Newest)
            throw new UnusableDatabaseException($"{path} has version {version}, this program reads version {Newest}: start the server of the same PlantWatch on it once");
    }

    /// <summary>Runs the scripts that are missing.</summary>
    public static void Apply(Session session)
    {
        RefuseOldEngine(session);
        var version = VersionOf(session);
        foreach (var (number, name) in Scripts)
            if (number > version) Apply(session, number, name);
    }

    /// <summary>Version of a file: number of the last script that ran on it.</summary>
    public static long VersionOf(Session session) => session.Prepare("PRAGMA user_version").Scalar() ?? 0;

    private static void Apply(Session session, int number, string name) => session.InTransaction(() =>
    {
        session.Script(Read(name));
        session.Script(string.Create(CultureInfo.InvariantCulture, $"PRAGMA application_id = {ApplicationId}; PRAGMA user_version = {number};"));
        return true;
    });

    /// <summary>Stops where the engine could damage what it is to keep.</summary>
    /// <exception cref="StorageException">The engine is too old.</exception>
    public static void RefuseOldEngine(Session session)
    {
        var statement = session.Prepare("SELECT sqlite_version()");
        statement.Next();
        var version = Version.Parse(statement.Text(0));
        statement.Reset();
        if (version < OldestEngine)
            throw new StorageException($"SQLite {version} is too old, {OldestEngine} is needed: older ones can damage a database in WAL mode", mayPass: false);
    }

    private static void RefuseForeignFile(Session session, string path)
    {
        var application = session.Prepare("PRAGMA application_id").Scalar();
        var tables = session.Prepare("SELECT count(*) FROM sqlite_schema").Scalar();
        if (application != ApplicationId && (application != 0 || tables != 0))
            throw new UnusableDatabaseException($"{path} is a database of another program and was left alone");
    }

    private static SortedDictionary<int, string> Find()
    {
        var found = new SortedDictionary<int, string>();
        foreach (var name in Assembly.GetExecutingAssembly().GetManifestResourceNames())
            if (name.EndsWith(".sql", StringComparison.Ordinal))
                found.Add(int.Parse(name.AsSpan(0, 4), CultureInfo.InvariantCulture), name);
        return found;
    }

    private static string Read(string name)
    {
        using var stream = Assembly.GetExecutingAssembly().GetManifestResourceStream(name)!;
        using var reader = new StreamReader(stream);
        return reader.ReadToEnd();
    }
}

@echo off
rem SPDX-License-Identifier: GPL-3.0-or-later
rem Finds Java, builds what is missing, and hands over; everything else is in Java.
setlocal enableextensions disabledelayedexpansion
set "home=%~dp0"
set "home=%home:~0,-1%"

set "java="
if exist "%home%\java\bin\java.exe" set "java=%home%\java\bin\java.exe"
if not defined java if defined JAVA_HOME if exist "%JAVA_HOME%\bin\java.exe" set "java=%JAVA_HOME%\bin\java.exe"
if not defined java for /f "delims=" %%j in ('where java 2^>nul') do if not defined java set "java=%%j"
if not defined java goto :nojava

rem A JDK older than 17 does not know the feature that this asks for; a Java without its compiler lacks the module.
"%java%" --list-modules 2>nul | findstr /b /c:"jdk.jshell" >nul || goto :nojava
set "version="
for /f "tokens=2 delims=@." %%v in ('"%java%" --list-modules 2^>nul ^| findstr /b /c:"java.base@"') do set "version=%%v"
if not defined version for /f "tokens=3" %%v in ('"%java%" -version 2^>^&1 ^| findstr /i "version"') do for /f "tokens=1 delims=.""" %%m in (%%v) do set "version=%%m"
if not defined version goto :nojava
if %version% lss 17 goto :nojava

rem In a release the jar lies here; in a clone it is built.
set "jar=%home%\parchment-kernel.jar"
if not exist "%home%\pom.xml" goto :start
set "jar=%home%\kernel-ext\target\parchment-kernel.jar"
rem The file 'built' is written when all of a build is there; one that was stopped leaves the file 'unfinished', and nothing of it is trusted.
set "built=%home%\kernel-ext\target\built"
set "unfinished=%home%\target\unfinished"
if exist "%unfinished%" rmdir /s /q "%home%\src\target" 2>nul
if exist "%unfinished%" rmdir /s /q "%home%\kernel-ext\target" 2>nul
if not exist "%jar%" goto :build
powershell -NoProfile -Command "$j = Get-Item -LiteralPath $env:built -ErrorAction SilentlyContinue; if (-not $j) { exit 1 }; $n = Get-ChildItem -Recurse -File -LiteralPath (Join-Path $env:home 'src\main'), (Join-Path $env:home 'kernel-ext\src\main'), (Join-Path $env:home 'pom.xml') | Where-Object { $_.LastWriteTime -gt $j.LastWriteTime } | Select-Object -First 1; if ($n) { exit 1 }"
if not errorlevel 1 goto :start

:build
where mvn >nul 2>nul || goto :nomaven
echo Building Parchment; the first time this fetches what it needs and takes a minute or two ... 1>&2
if not exist "%built%" rmdir /s /q "%home%\kernel-ext\target\lib" 2>nul
if not exist "%home%\target" mkdir "%home%\target"
type nul >"%unfinished%"
pushd "%home%"
call mvn -q -B -DskipTests -Dspotless.check.skip=true package
if errorlevel 1 (
    popd
    del "%unfinished%" "%built%" 2>nul
    echo The build failed; the lines above say why. 1>&2
    exit /b 2
)
popd
move /y "%unfinished%" "%built%" >nul

:start
set "native="
if %version% geq 24 set "native=--enable-native-access=ALL-UNNAMED"
"%java%" %native% -Djava.awt.headless=true -Dfile.encoding=UTF-8 "-Dparchment.home=%home%" -jar "%jar%" %*
exit /b %errorlevel%

:nojava
echo Parchment needs a Java development kit ^(JDK^), version 17 or later, in JAVA_HOME or on the PATH. 1>&2
echo Install one, for example from https://adoptium.net, and Apache Maven unless this is a release. 1>&2
exit /b 2

:nomaven
echo Parchment must be built first, and that needs Apache Maven ^(the command mvn^). 1>&2
echo See https://maven.apache.org/install.html 1>&2
exit /b 2
